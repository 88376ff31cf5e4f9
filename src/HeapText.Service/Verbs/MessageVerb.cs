using System.CommandLine;
using System.Text.Json.Nodes;
using HeapText.Dialog.Ports;
using HeapText.Service.Startup;
using NodaTime;
using NodaTime.Extensions;
using NodaTime.Text;

namespace HeapText.Service.Verbs;

/// <summary>message: what was sent to farmers and how it ended, and what was given up. No texts, no whole
/// numbers.</summary>
internal static class MessageVerb
{
    private const int MostSetAside = 1_000;

    public static Command Create() => new("message", "Shows what became of messages.") { CreateList() };

    private static Command CreateList()
    {
        var aside = new Option<bool>("--set-aside")
        {
            Description = $"Those given up, with the reason: the newest {MostSetAside}.",
        };
        var subject = new Option<string?>("--subject") { Description = "Those of one farmer, by the subject id." };
        var list = new Command("list", "Lists messages as JSON Lines: of each member of a group the newest sent.")
        {
            aside, subject,
        };
        return StoreVerb.With(list, async (parsed, settings) =>
        {
            await using var store = await RecordsAtStart.OpenBeside(settings.Store);
            var output = parsed.InvocationConfiguration.Output;
            var only = parsed.GetValue(subject);
            if (parsed.GetValue(aside)) await ListSetAside(store, only, output);
            else await ListSent(store, only, output);
            return ExitCodes.Done;
        });
    }

    private static async Task ListSetAside(IStore store, string? subject, TextWriter output)
    {
        foreach (var aside in await store.SetAside(MostSetAside, CancellationToken.None))
        {
            if (subject is null || aside.Message.Id.StartsWith(subject + "-", StringComparison.Ordinal))
                TextLines.Write(output, new JsonObject
                {
                    ["id"] = aside.Message.Id,
                    ["to"] = aside.To.Masked,
                    ["line"] = aside.Message.Line,
                    ["at"] = Iso(aside.At),
                    ["reason"] = aside.Reason,
                });
        }
    }

    private static async Task ListSent(IStore store, string? subject, TextWriter output)
    {
        var now = TimeProvider.System.GetUtcNow().ToInstant();
        foreach (var group in await store.Groups(CancellationToken.None))
        {
            foreach (var key in await store.Members(group.Code, CancellationToken.None))
            {
                var start = await store.Begin(key, null, now, CancellationToken.None);
                if (start is not { Farmer: { } farmer, Number: { } number }) continue;
                if (subject is not null && farmer.Subject != subject) continue;
                foreach (var sent in await store.Sent(key, CancellationToken.None))
                    TextLines.Write(output, Document(sent, number));
            }
        }
    }

    private static JsonObject Document(SentMessage sent, Msisdn to) => new()
    {
        ["id"] = sent.Id,
        ["to"] = to.Masked,
        ["line"] = sent.Line,
        ["at"] = Iso(sent.At),
        ["state"] = sent.State is { } state ? state.ToString().ToLowerInvariant() : "sent",
        ["stateAt"] = sent.StateAt is { } at ? Iso(at) : null,
        ["segments"] = sent.Segments,
        ["parts"] = sent.Parts,
        ["partsDelivered"] = sent.PartsDelivered,
    };

    private static string Iso(Instant at) => InstantPattern.ExtendedIso.Format(at);
}
