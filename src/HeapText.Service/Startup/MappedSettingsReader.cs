using HeapText.Carriers.Mapped;

namespace HeapText.Service.Startup;

/// <summary>Reads what a mapped line says beside what all lines say, and checks it whole.</summary>
internal static class MappedSettingsReader
{
    /// <summary>The settings of a mapped line.</summary>
    public static readonly string[] Known = ["Auth", "Sms", "Ussd", "Receipts", "Calls", "Send"];

    /// <summary>The line; null when it cannot be used. Every fault is added to <paramref name="faults"/>.</summary>
    public static MappedLineOptions? Read(IConfigurationSection line, List<string> faults)
    {
        var before = faults.Count;
        var whole = new MappedSection(line, faults);
        var sms = MappedHookReader.ReadSms(whole.Part("Sms"));
        var ussd = MappedHookReader.ReadUssd(whole.Part("Ussd"));
        var receipts = MappedHookReader.ReadReceipts(whole.Part("Receipts"));
        var calls = MappedHookReader.ReadCalls(whole.Part("Calls"));
        HookMapping[] hooks = [.. new HookMapping?[] { sms, ussd, receipts, calls }.OfType<HookMapping>()];
        var auth = ReadAuth(whole, hooks);
        var send = MappedSendReader.Read(whole.Part("Send"), SettingsReader.Filled(line["From"]) ?? "");
        if (receipts is not null && send is not null) CheckReferences(whole, send);
        return faults.Count > before || send is null
            ? null
            : new MappedLineOptions
            {
                Name = line.Key,
                From = "",
                Auth = auth,
                Sms = sms,
                Ussd = ussd,
                Receipts = receipts,
                Calls = calls,
                Send = send,
            };
    }

    private static LineAuth ReadAuth(MappedSection line, HookMapping[] hooks)
    {
        var auth = line.Part("Auth");
        if (hooks.Length == 0)
        {
            if (auth.IsThere)
                auth.Fault("is not used, since nothing comes in; take it out, or map Sms, Ussd, Receipts or Calls");
            return new LineAuth.None();
        }

        if (!auth.IsThere)
        {
            auth.Fault("Kind", "is missing; write how the gateway proves itself: basic, bearer, header-key, query-key "
                + "or hmac, or none where AllowedFrom holds its addresses");
            return new LineAuth.None();
        }

        var proof = MappedAuthReader.Read(auth, inbound: true);
        if (proof is LineAuth.None && line.Text("AllowedFrom") is null)
            line.Fault("AllowedFrom", "is missing, and Auth:Kind is none, so anyone could post; write the gateway's "
                + "addresses, or another Auth:Kind");
        if (proof is LineAuth.Hmac hmac) CheckCovered(auth, hmac.Scheme, hooks);
        return proof;
    }

    // What the signature leaves out, anyone could change.
    private static void CheckCovered(MappedSection auth, HmacScheme scheme, HookMapping[] hooks)
    {
        var places = hooks.SelectMany(hook => hook.Fields).SelectMany(field => field.Places).ToList();
        var wanted = places.Select(place => place switch
        {
            Place.Query => "query",
            Place.Header(var name) => $"header:{name}",
            { BodyKind: not null } => "body",
            _ => null,
        });
        var covered = scheme.Over.Names.ToHashSet(StringComparer.OrdinalIgnoreCase);
        foreach (var name in wanted.OfType<string>().Distinct(StringComparer.OrdinalIgnoreCase).Except(covered))
            auth.Fault("Over", $"leaves out {{{name}}}, where fields stand, so anyone could change them; put it in");
    }

    private static void CheckReferences(MappedSection line, SendMapping send)
    {
        var sendsId = send.Url.Names.Concat(send.Body?.Names ?? [])
            .Concat(send.Headers.SelectMany(header => header.Value.Names)).Contains("id");
        if (send.Answers.Reference is null && !sendsId)
            line.Part("Send").Part("Answers").Fault("Reference", "is missing, and {id} is not sent, so no receipt "
                + "could be told whose it is; say where the gateway's reference stands, like json:/id, or send {id}");
    }
}
