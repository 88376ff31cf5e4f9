using HeapText.Carriers.Mapped;
using HeapText.Dialog.Ports;
using NodaTime;

namespace HeapText.Service.Startup;

/// <summary>Reads how each hook of a mapped line reads its requests.</summary>
internal static class MappedHookReader
{
    private static readonly AnswerTemplate Empty = new();
    private static readonly AnswerTemplate Words = new()
    {
        ContentType = "text/plain; charset=utf-8",
        Body = Template.Parse("{text}"),
    };

    /// <summary>Texts coming in; null when the section is not there.</summary>
    public static SmsMapping? ReadSms(MappedSection hook)
    {
        if (!hook.IsThere) return null;
        hook.Know("Methods", "Each", "Id", "From", "Text", "Time", "Reply", "Answer", "Quiet");
        var each = ReadEach(hook);
        var inAnswer = hook.OneOf("Reply", "pushed", "response") == "response";
        if (inAnswer && each is not null)
            hook.Fault("Reply", "cannot be response where Each brings several texts; write pushed, or take out Each");
        if (!inAnswer && hook.Part("Quiet").IsThere)
            hook.Part("Quiet").Fault("is only used where Reply is response; take it out");
        string[] names = inAnswer ? [.. SmsMapping.Names, "text"] : Repeatable(each, SmsMapping.Names);
        var answer = MappedAnswerReader.Read(hook.Part("Answer"), inAnswer ? Words : Empty, names);
        if (inAnswer && !answer.Body.Names.Contains("text"))
            hook.Part("Answer").Fault("Body", "does not hold {text}, the reply; put it where the gateway reads it");
        var mapping = new SmsMapping
        {
            Methods = ReadMethods(hook),
            Each = each,
            Id = hook.WantedOwn("Id"),
            From = hook.WantedOwn("From"),
            Text = hook.WantedField("Text"),
            Time = hook.Field("Time"),
            RepliesInAnswer = inAnswer,
            Answer = answer,
            Quiet = MappedAnswerReader.Read(hook.Part("Quiet"), answer with { Body = Template.Parse("") }, names),
        };
        CheckHash(hook, mapping);
        return Checked(hook, mapping);
    }

    /// <summary>Steps of dialled sessions; null when the section is not there.</summary>
    public static UssdMapping? ReadUssd(MappedSection hook)
    {
        if (!hook.IsThere) return null;
        hook.Know("Methods", "Session", "From", "Input", "InputHolds", "Separator", "Step", "Open", "Closed");
        var holdsAll = hook.OneOf("InputHolds", "newest", "all") == "all";
        var separator = hook.Raw("Separator");
        if (holdsAll && string.IsNullOrEmpty(separator))
            hook.Fault("Separator", "is missing; write what stands between two entries, like *");
        if (!holdsAll && separator is not null)
            hook.Fault("Separator", "is only used where InputHolds is all; write that, or take it out");
        if (!holdsAll && hook.Text("Step") is null)
            hook.Fault("Step", "is missing; say where a number stands that rises with each entry, or write InputHolds "
                + "all where the input holds all entries so far");
        var open = MappedAnswerReader.Read(hook.Part("Open"), Words, UssdMapping.Names);
        var closed = MappedAnswerReader.Read(hook.Part("Closed"), open, UssdMapping.Names);
        CheckScreens(hook, open, closed);
        var step = hook.Text("Step") is null ? null : hook.WantedOwn("Step");
        return Checked(hook, new UssdMapping
        {
            Methods = ReadMethods(hook),
            Session = hook.WantedOwn("Session"),
            From = hook.WantedOwn("From"),
            Input = hook.WantedField("Input"),
            Separator = holdsAll ? separator : null,
            Step = step,
            Answer = open,
            Closed = closed,
        });
    }

    /// <summary>Receipts; null when the section is not there.</summary>
    public static ReceiptMapping? ReadReceipts(MappedSection hook)
    {
        if (!hook.IsThere) return null;
        hook.Know("Methods", "Each", "Message", "State", "States", "At", "AtForm", "AtZone", "Answer");
        var each = ReadEach(hook);
        return Checked(hook, new ReceiptMapping
        {
            Methods = ReadMethods(hook),
            Each = each,
            Message = hook.WantedOwn("Message"),
            State = hook.WantedField("State"),
            States = ReadStates(hook.Part("States")),
            At = hook.Field("At"),
            AtForm = ReadTimeForm(hook),
            Answer = MappedAnswerReader.Read(
                hook.Part("Answer"), Empty, Repeatable(each, ReceiptMapping.Names)),
        });
    }

    /// <summary>Missed calls; null when the section is not there.</summary>
    public static CallMapping? ReadCalls(MappedSection hook)
    {
        if (!hook.IsThere) return null;
        hook.Know("Methods", "Each", "Id", "From", "Answer");
        var each = ReadEach(hook);
        return Checked(hook, new CallMapping
        {
            Methods = ReadMethods(hook),
            Each = each,
            Id = hook.WantedOwn("Id"),
            From = hook.WantedOwn("From"),
            Answer = MappedAnswerReader.Read(hook.Part("Answer"), Empty, Repeatable(each, CallMapping.Names)),
        });
    }

    private static string[] Repeatable(Place? each, IReadOnlyList<string> names) =>
        each is null ? [.. names, "count"] : ["count"];

    private static string[] ReadMethods(MappedSection hook)
    {
        string[] known = ["GET", "POST", "PUT"];
        var methods = hook.List("Methods").Select(method => method.ToUpperInvariant()).ToArray();
        if (methods.Except(known).Any()) hook.Fault("Methods", "names another than GET, POST and PUT; write POST");
        return methods.Length == 0 ? ["POST"] : methods;
    }

    private static Place? ReadEach(MappedSection hook)
    {
        if (hook.Text("Each") is not { } text) return null;
        var place = Place.Parse(text, out _);
        if (place is Place.Json or Place.Xml { Path.NamesElements: true }) return place;
        hook.Fault("Each", "is no list; write where it stands, like json:/messages or xml:/letter/message");
        return null;
    }

    private static void CheckHash(MappedSection hook, SmsMapping sms)
    {
        var hashes = sms.Id.Places is [.., Place.Hash];
        if (hashes && hook.Text("Time") is null)
            hook.Fault("Time", "is missing; Id hash: is worked out from sender, text and time, so say where the time "
                + "stands");
        if (!hashes && hook.Text("Time") is not null)
            hook.Fault("Time", "is only used for Id hash:; write that, or take it out");
    }

    private static void CheckScreens(MappedSection hook, AnswerTemplate open, AnswerTemplate closed)
    {
        foreach (var (key, answer) in new[] { ("Open", open), ("Closed", closed) })
            if (!answer.Body.Names.Contains("text"))
                hook.Part(key).Fault("Body", "does not hold {text}, the screen; put it where the gateway reads it");
        var same = open.Status == closed.Status && open.ContentType == closed.ContentType
            && open.Body.Text == closed.Body.Text
            && open.Headers.Select(header => (header.Key, header.Value.Text))
                .SequenceEqual(closed.Headers.Select(header => (header.Key, header.Value.Text)));
        if (same)
            hook.Part("Closed").Fault("is the same as Open, so no session would end; mark it by a body, a header or a "
                + "status of its own");
    }

    private static Dictionary<string, DeliveryState> ReadStates(MappedSection states)
    {
        states.Know(Enum.GetNames<DeliveryState>());
        var meant = new Dictionary<string, DeliveryState>(StringComparer.OrdinalIgnoreCase);
        foreach (var state in Enum.GetValues<DeliveryState>())
        {
            foreach (var word in states.List(state.ToString()))
                if (!meant.TryAdd(word, state))
                    states.Fault(state.ToString(), $"names {word}, which already means {meant[word]}; write it once");
        }

        if (!meant.ContainsValue(DeliveryState.Delivered))
            states.Fault("Delivered", "is missing; write the gateway's words for it, parted by commas");
        return meant;
    }

    private static TimeForm ReadTimeForm(MappedSection hook)
    {
        DateTimeZone? zone = null;
        if (hook.Text("AtZone") is { } name && (zone = DateTimeZoneProviders.Tzdb.GetZoneOrNull(name)) is null)
            hook.Fault("AtZone", "is no time zone; write one of the tz database, like Africa/Nairobi");
        if (hook.Text("At") is null && (hook.Text("AtForm") ?? hook.Text("AtZone")) is not null)
            hook.Fault("At", "is missing; say where the time stands, or take out AtForm and AtZone");
        if (hook.Text("AtForm") is not { } form) return TimeForm.Rfc3339;
        if (TimeForm.Parse(form, zone, out var fault) is { } read) return read;
        hook.Fault("AtForm", fault);
        return TimeForm.Rfc3339;
    }

    private static T Checked<T>(MappedSection hook, T mapping)
        where T : HookMapping
    {
        foreach (var field in mapping.Fields.Where(field => field.Setting != "Id" || mapping is not SmsMapping))
            if (field.Places.Any(place => place is Place.Hash))
                hook.Fault(field.Setting, "cannot be worked out by hash:; say where the gateway writes it");
        var places = mapping.Fields.SelectMany(field => field.Places).Append(mapping.Each).OfType<Place>();
        var kinds = places.Select(place => place.BodyKind).OfType<string>().Distinct().ToList();
        if (kinds.Count > 1)
            hook.Fault($"reads one body as {string.Join(" and ", kinds)}; a body is only one of them");
        if (kinds.Count > 0 && mapping.Methods.All(method => method == "GET"))
            hook.Fault("Methods", "takes GET alone, which brings no body, but fields stand in one; add POST");
        return mapping;
    }
}
