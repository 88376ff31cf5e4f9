using System.Globalization;
using HeapText.Carriers.Numbers;
using HeapText.Dialog.Ports;

namespace HeapText.Carriers.Mapped;

/// <summary>Steps of dialled sessions.</summary>
public sealed record UssdMapping : HookMapping
{
    /// <summary>What the screens may hold.</summary>
    public static readonly IReadOnlyList<string> Names = ["text", "session", "step", "from"];

    /// <summary>The id of the session.</summary>
    public required Field Session { get; init; }

    /// <summary>The dialling phone's number.</summary>
    public required Field From { get; init; }

    /// <summary>What was entered.</summary>
    public required Field Input { get; init; }

    /// <summary>What parts the entries where the input holds all of them since the session began; null where it holds
    /// the newest alone.</summary>
    public string? Separator { get; init; }

    /// <summary>What rises with each entry; null where it is counted by the separators.</summary>
    public Field? Step { get; init; }

    /// <summary>How a screen is answered that ends the session; <see cref="HookMapping.Answer"/> is for one that stays
    /// open.</summary>
    public required AnswerTemplate Closed { get; init; }

    /// <inheritdoc/>
    public override IEnumerable<Field> Fields =>
        Step is null ? [Session, From, Input] : [Session, From, Input, Step];

    /// <summary>Reads the step of a request.</summary>
    public HookReading<Dialled> Read(HookRequest request, string line, Func<string, NumberReading> readNumber) =>
        ReadAll(request, fields => ReadOne(fields, line, readNumber));

    /// <summary>The answer that shows a screen.</summary>
    public HookAnswer Write(Dialled step, Screen screen)
    {
        ArgumentNullException.ThrowIfNull(step);
        ArgumentNullException.ThrowIfNull(screen);
        return (screen.Open ? Answer : Closed).Fill(new Dictionary<string, string>
        {
            ["text"] = screen.Text,
            ["session"] = step.Session,
            ["step"] = step.Step.ToString(CultureInfo.InvariantCulture),
            ["from"] = step.From.Value,
        });
    }

    private Dialled? ReadOne(FieldReader fields, string line, Func<string, NumberReading> readNumber)
    {
        var inHeader = Answer.RepeatsInHeader("session") || Closed.RepeatsInHeader("session");
        var session = fields.Id(Session, inHeader);
        var from = fields.Number(From, readNumber);
        var input = fields.Text(Input, 0, SmsMapping.LongestText);
        if (session is null || from is null || input is null) return null;
        var (newest, counted) = Newest(input);
        var step = Step is null ? counted : ReadStep(fields, Step);
        return step is null ? null : new Dialled(session, step.Value, line, from.Value, newest);
    }

    private (string Newest, int Count) Newest(string input)
    {
        if (Separator is null || input.Length == 0) return (input, 0);
        var entries = input.Split(Separator);
        return (entries[^1], entries.Length);
    }

    private static int? ReadStep(FieldReader fields, Field step)
    {
        const int longest = 10;
        if (fields.Text(step, 1, longest) is not { } text) return null;
        if (int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var number)) return number;
        fields.Fault(step, "it is not a whole number from 0; send one that rises with each entry");
        return null;
    }
}
