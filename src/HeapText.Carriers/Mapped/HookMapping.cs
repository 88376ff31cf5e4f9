using HeapText.Carriers.Numbers;
using HeapText.Dialog.Ports;

namespace HeapText.Carriers.Mapped;

/// <summary>How the requests of one hook are read and answered.</summary>
public abstract record HookMapping
{
    /// <summary>Faults told of one request: a body of junk would otherwise be answered, and logged, at fifty times its
    /// length.</summary>
    public const int MostFaults = 20;

    /// <summary>The methods it takes: GET, POST or PUT.</summary>
    public IReadOnlyList<string> Methods { get; init; } = ["POST"];

    /// <summary>Where the list stands when a request brings several; null when it brings one.</summary>
    public Place? Each { get; init; }

    /// <summary>How it is answered once the effect is durable.</summary>
    public required AnswerTemplate Answer { get; init; }

    /// <summary>Where its fields stand.</summary>
    public abstract IEnumerable<Field> Fields { get; }

    /// <summary>Reads all messages of a request; the first unreadable ones are named.</summary>
    internal HookReading<T> ReadAll<T>(HookRequest request, Func<FieldReader, T?> read)
        where T : class
    {
        List<T> taken = [];
        List<string> faults = [];
        if (FieldSource.Of(request).Items(Each, out var fault) is not { } items)
            return new HookReading<T>([], [$"Each: {fault}."]);
        for (var i = 0; i < items.Count; i++)
        {
            var reader = new FieldReader(items[i]);
            var message = read(reader);
            if (message is not null && reader.Faults.Count == 0) taken.Add(message);
            else faults.AddRange(reader.Faults.Select(one => Each is null ? one : $"message {i + 1}: {one}"));
        }

        return new HookReading<T>(taken, [.. faults.Distinct().Take(MostFaults)]);
    }
}

/// <summary>What was read from a request.</summary>
/// <param name="Taken">The messages that could be read; none where nothing is to be done.</param>
/// <param name="Faults">Fault and fix of each field that could not, the first
/// <see cref="HookMapping.MostFaults"/>.</param>
public sealed record HookReading<T>(IReadOnlyList<T> Taken, IReadOnlyList<string> Faults)
{
    /// <summary>False when nothing of the request can be used.</summary>
    public bool IsUsable => Taken.Count > 0 || Faults.Count == 0;
}

/// <summary>Reads the fields of one message and gathers their faults.</summary>
internal sealed class FieldReader(FieldSource source)
{
    private readonly List<string> _faults = [];

    /// <summary>Fault and fix of each field that could not be read; holds nothing of what stands there.</summary>
    public IReadOnlyList<string> Faults => _faults;

    /// <summary>What stands in a field, of some length; null when it cannot be used.</summary>
    public string? Text(Field field, int shortest, int longest)
    {
        switch (source.Read(field))
        {
            case FieldValue.Found { Values: [var text] } when text.Length >= shortest && text.Length <= longest:
                return text;
            case FieldValue.Found { Values: [var text] }:
                return Fault(field, text.Length < shortest ? "it is empty" : $"it is longer than {longest} characters");
            case FieldValue.Found:
                return Fault(field, "it stands there more than once; send it once");
            case FieldValue.Broken(var why):
                return Fault(field, why);
            default:
                return Fault(field, "it is missing");
        }
    }

    /// <summary>A telephone number as the line takes it.</summary>
    public Msisdn? Number(Field field, Func<string, NumberReading> read)
    {
        const int longest = 64;
        if (Text(field, 1, longest) is not { } text) return null;
        switch (read(text))
        {
            case NumberReading.Good(var number):
                return number;
            case NumberReading.Bad(var why):
                Fault(field, why);
                return null;
            default:
                throw new System.Diagnostics.UnreachableException();
        }
    }

    /// <summary>An id, which a header of the answer may repeat.</summary>
    public string? Id(Field field, bool inHeader)
    {
        const int longest = 200;
        if (Text(field, 1, longest) is not { } id) return null;
        if (id.Any(char.IsControl)) return Fault(field, "it holds control characters; send it without them");
        return inHeader && !HeaderText.IsValue(id)
            ? Fault(field, "it holds characters that no header can repeat; send printable ASCII")
            : id;
    }

    /// <summary>True when nothing stands in a field.</summary>
    public bool IsMissing(Field field) => source.Read(field) is FieldValue.Missing;

    /// <summary>What stands in a field; null when that cannot be told, which is no fault.</summary>
    public string? Optional(Field? field) =>
        field is not null && source.Read(field) is FieldValue.Found { Values: [var text] } ? text : null;

    /// <summary>Adds a fault; always null.</summary>
    public string? Fault(Field field, string why)
    {
        _faults.Add($"{field.Setting}: {why}.");
        return null;
    }
}
