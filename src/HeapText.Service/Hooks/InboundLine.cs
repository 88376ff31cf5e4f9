using System.Net;
using HeapText.Carriers;
using HeapText.Carriers.Native;
using HeapText.Carriers.Numbers;
using HeapText.Carriers.Signing;
using HeapText.Service.Startup;

namespace HeapText.Service.Hooks;

/// <summary>A line as its hooks see it.</summary>
/// <param name="Name">Its name in the address.</param>
/// <param name="Keys">Keys a message must be signed with; null on the practice line, which takes unsigned ones.</param>
/// <param name="AllowedFrom">Networks it may be posted from; empty for all.</param>
/// <param name="ReadNumber">Reads a sender's number as this line takes it.</param>
internal sealed record InboundLine(
    string Name, IReadOnlyList<WebhookKey>? Keys, IReadOnlyList<IPNetwork> AllowedFrom,
    Func<string, NumberReading> ReadNumber)
{
    /// <summary>Name of the line of practice mode.</summary>
    public const string Practice = "practice";

    /// <summary>The lines these settings open, by name.</summary>
    public static IReadOnlyDictionary<string, InboundLine> From(Settings settings)
    {
        var lines = settings.IsPractice
            ? [new InboundLine(Practice, null, [], NumberReader.ReadPractice)]
            : settings.Lines.Select(Of);
        return lines.ToDictionary(line => line.Name, StringComparer.Ordinal);
    }

    /// <summary>Whether its hooks may be posted from an address.</summary>
    public bool Allows(IPAddress? address)
    {
        if (AllowedFrom.Count == 0) return true;
        if (address is null) return false;
        var plain = address.IsIPv4MappedToIPv6 ? address.MapToIPv4() : address;
        return AllowedFrom.Any(network => network.Contains(plain));
    }

    private static InboundLine Of(LineOptions line) => new(
        line.Name, (line as NativeLineOptions)?.Keys, line.AllowedFrom,
        text => NumberReader.ReadReal(text, line.Region, line.Countries));
}
