using System.Net;
using HeapText.Carriers;
using HeapText.Carriers.Mapped;
using HeapText.Carriers.Native;
using HeapText.Carriers.Numbers;
using HeapText.Service.Startup;

namespace HeapText.Service.Hooks;

/// <summary>A line as its hooks see it.</summary>
/// <param name="Name">Its name in the address.</param>
/// <param name="AllowedFrom">Networks it may be posted from; empty for all.</param>
/// <param name="ReadNumber">Reads a sender's number as this line takes it.</param>
/// <param name="Form">How its gateway speaks.</param>
internal sealed record InboundLine(
    string Name, IReadOnlyList<IPNetwork> AllowedFrom, Func<string, NumberReading> ReadNumber, ILineForm Form)
{
    /// <summary>Name of the line of practice mode.</summary>
    public const string Practice = "practice";

    /// <summary>The lines these settings open, by name.</summary>
    public static IReadOnlyDictionary<string, InboundLine> From(Settings settings)
    {
        var lines = settings.IsPractice ? [OfPractice()] : settings.Lines.Select(Of).OfType<InboundLine>();
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

    /// <summary>The line of practice mode, which takes unsigned messages.</summary>
    public static InboundLine OfPractice() => new(Practice, [], NumberReader.ReadPractice, new NativeForm(null));

    /// <summary>A line as its hooks see it; null when nothing comes in by hooks.</summary>
    public static InboundLine? Of(LineOptions line)
    {
        ILineForm? form = line switch
        {
            NativeLineOptions native => new NativeForm(native.Keys),
            MappedLineOptions mapped => new MappedForm(mapped),
            _ => null,
        };
        return form is null
            ? null
            : new InboundLine(
                line.Name, line.AllowedFrom, text => NumberReader.ReadReal(text, line.Region, line.Countries), form);
    }
}
