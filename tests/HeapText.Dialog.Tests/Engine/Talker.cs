using HeapText.Agronomy.Heap;
using HeapText.Dialog.Engine;
using HeapText.Dialog.Ports;
using NodaTime;

namespace HeapText.Dialog.Tests.Engine;

/// <summary>A farmer to talk for in tests: keeps the record and the clock between texts.</summary>
internal sealed class Talker
{
    public const string Zone = "Africa/Nairobi";

    /// <summary>Texts from joining to a built heap, with hour and rod answered.</summary>
    public static readonly string[] ToABuiltHeap =
    [
        "join 41", "yes", "20 wheelbarrows maize stalks, 5 wheelbarrows green weeds, 14 buckets cow dung",
        "built", "2", "1",
    ];

    private readonly Conversation _conversation;

    /// <summary>The districts' own words; the farmer's district is "41".</summary>
    public WordBook Words { get; } = new(Repository.Dialogs.Reader);

    public Talker(string zone = Zone, HeapMethod? method = null, Office? office = null, Group? group = null)
    {
        method ??= HeapMethods.Usual;
        _conversation = new Conversation(
            Repository.Dialogs,
            new Dictionary<int, Group>
            {
                [41] = group ?? new Group(41, "Upper Ziwani", "en", zone, "Trainer, Marula Flats"),
            },
            office ?? new Office
            {
                Methods = new Dictionary<string, HeapMethod>(HeapMethods.All) { [method.Key] = method },
                GroupMethods = new Dictionary<int, string> { [41] = method.Key },
            },
            Words);
    }

    public Instant Now { get; set; } = Instant.FromUtc(2026, 3, 2, 4, 0);

    public Farmer? Farmer { get; set; }

    public Instant? NextDue { get; private set; }

    public IReadOnlyList<Outbound> Says { get; private set; } = [];

    /// <summary>What the dialled screen shows.</summary>
    public Screen Screen { get; private set; } = new("", false);

    private int _sessions;
    private int _step;

    /// <summary>The texts just said, one after the other.</summary>
    public string Said => string.Join("\n", Says.Select(message => message.Text));

    public HeapRecord Heap => Farmer!.Heaps[^1];

    /// <summary>A farmer who has joined and built a heap of maize stalks, weeds and dung, with hour and rod
    /// known.</summary>
    public static Talker WithHeap(string zone = Zone, HeapMethod? method = null) =>
        new Talker(zone, method).Hear(ToABuiltHeap);

    public Talker Hear(params string[] texts)
    {
        foreach (var text in texts) Take(_conversation.Hear(Farmer, "subject", "practice", text, Now));
        return this;
    }

    public Talker Ring()
    {
        Take(_conversation.Ring(Farmer, "subject", "practice", Now));
        return this;
    }

    /// <summary>Dials: a new session on the screen.</summary>
    public Talker Dial()
    {
        _sessions++;
        _step = 0;
        return Enter("");
    }

    /// <summary>Enters one after the other on the dialled screen.</summary>
    public Talker Enter(params string[] entries)
    {
        foreach (var entry in entries) Step($"session {_sessions}", ++_step, entry);
        return this;
    }

    /// <summary>One step of any session.</summary>
    public Talker Step(string session, int step, string entry)
    {
        Assert.True(Msisdn.TryParse("+99910000001", out var number));
        var dialled = new Dialled(session, step, "practice", number, entry);
        var reaction = _conversation.Dial(Farmer, "subject", dialled, Now);
        (Farmer, Says, NextDue, Screen) = (reaction.Farmer, reaction.Says, reaction.NextDue, reaction.Screen);
        return this;
    }

    /// <summary>All pages from the present one on, one text; leaves the screen on the last.</summary>
    public string ReadOn()
    {
        List<string> pages = [Screen.Text];
        while (Screen.Open && Screen.Text.Split('\n')[^1].StartsWith('#')) pages.Add(Enter("#").Screen.Text);
        return string.Join("\n", pages);
    }

    /// <summary>Lets time pass and wakes whenever something is due, as the service does.</summary>
    public List<(Instant At, Outbound Message)> Pass(Duration time)
    {
        List<(Instant, Outbound)> said = [];
        var end = Now + time;
        while (NextDue is { } due && due <= end)
        {
            Now = Instant.Max(due, Now);
            Wake();
            said.AddRange(Says.Select(message => (Now, message)));
        }
        Now = end;
        return said;
    }

    /// <summary>The trainer explains a word; the service then looks at each farmer who waits for one.</summary>
    public Talker Explain(string word, string? material)
    {
        Words.Set([new OwnWord("41", word, "en", material)]);
        return Wake();
    }

    public Talker Wake()
    {
        Take(_conversation.Wake(Farmer!, Now));
        return this;
    }

    private void Take(Reaction reaction) =>
        (Farmer, Says, NextDue) = (reaction.Farmer, reaction.Says, reaction.NextDue);
}
