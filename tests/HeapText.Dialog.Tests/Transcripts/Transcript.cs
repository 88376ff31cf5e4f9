using System.Globalization;
using System.Text;
using HeapText.Dialog.Engine;
using HeapText.Dialog.Ports;
using HeapText.Dialog.Text;
using NodaTime;
using NodaTime.Text;

namespace HeapText.Dialog.Tests.Transcripts;

/// <summary>Replays the farmer's lines of a transcript on a clock of its own and writes the whole of it anew.</summary>
/// <remarks>
/// First line: title, language, channel, start, between " · ". Then "&gt;" is a text of the farmer, "%" an entry on a
/// dialled screen or the code that is dialled, "~ 3 days" or "~ 5 hours" lets time pass, "! word = material" is the
/// trainer explaining a word; these are kept. The rest is written: "@" the local time of what follows, "|" a screen
/// with its length, "&lt;" a message with its length, "=" where the farmer stands after it.
/// </remarks>
internal sealed class Transcript
{
    private static readonly OffsetDateTimePattern Start =
        OffsetDateTimePattern.CreateWithInvariantCulture("uuuu-MM-dd HH:mm o<+HH:mm>");

    private static readonly LocalDateTimePattern Stamp =
        LocalDateTimePattern.CreateWithInvariantCulture("ddd d MMM HH:mm");

    private readonly StringBuilder _written = new();
    private readonly Conversation _conversation;
    private readonly DateTimeZone _zone;
    private readonly string _language;
    private readonly WordBook _words;
    private readonly List<OwnWord> _explained = [];
    private Instant _now;
    private Farmer? _farmer;
    private Instant? _nextDue;
    private int _sessions;
    private int _step;

    private Transcript(string title, DialogSet dialogs, string? language)
    {
        var parts = title.Split(" · ");
        var start = Start.Parse(parts[3]).GetValueOrThrow();
        _language = language ?? parts[1];
        _zone = DateTimeZoneProviders.Tzdb["Africa/Nairobi"];
        _now = start.ToInstant();
        var group = new Group(41, "Upper Ziwani", _language, _zone.Id, "Trainer, Marula Flats");
        _words = new WordBook(dialogs.Reader);
        _conversation = new Conversation(
            dialogs, new Dictionary<int, Group> { [41] = group }, new Office(), _words);
        _written.Append(title).Append('\n');
    }

    /// <summary>All messages of the last replay.</summary>
    public List<string> Messages { get; } = [];

    /// <summary>All screens of the last replay.</summary>
    public List<string> Screens { get; } = [];

    /// <summary>Replays a transcript.</summary>
    /// <param name="text">The transcript.</param>
    /// <param name="dialogs">Words other than those that come with the product.</param>
    /// <param name="language">The group's language, where it is not the transcript's.</param>
    public static (string Written, Transcript Replayed) Replay(
        string text, DialogSet? dialogs = null, string? language = null)
    {
        var lines = text.Split('\n');
        var transcript = new Transcript(lines[0], dialogs ?? Repository.Dialogs, language);
        foreach (var line in lines.Skip(1)) transcript.Take(line);
        return (transcript._written.ToString(), transcript);
    }

    private void Take(string line)
    {
        if (line.StartsWith("> ", StringComparison.Ordinal)) Hear(line[2..]);
        else if (line.StartsWith("% ", StringComparison.Ordinal)) Enter(line[2..]);
        else if (line.StartsWith("~ ", StringComparison.Ordinal)) Pass(line);
        else if (line.StartsWith("! ", StringComparison.Ordinal)) Explain(line);
    }

    private void Explain(string line)
    {
        _written.Append(CultureInfo.InvariantCulture, $"\n{line}\n");
        var parts = line[2..].Split(" = ");
        _explained.Add(new OwnWord("41", parts[0], _language, parts[1]));
        _words.Set(_explained);
        After(_conversation.Wake(_farmer!, _now));
        _now += Duration.FromMinutes(1);
    }

    private void Hear(string text)
    {
        _written.Append(CultureInfo.InvariantCulture, $"\n> {text}\n");
        After(_conversation.Hear(_farmer, "s", "practice", text, _now));
        _now += Duration.FromMinutes(1);
    }

    private void Enter(string entry)
    {
        _written.Append(CultureInfo.InvariantCulture, $"\n% {entry}\n");
        var isDialled = entry is ['*', _, .., '#'];
        (_sessions, _step) = isDialled ? (_sessions + 1, 1) : (_sessions, _step + 1);
        Assert.True(Msisdn.TryParse("+99910000001", out var number));
        var reaction = _conversation.Dial(
            _farmer, "s", new Dialled($"session {_sessions}", _step, "practice", number, isDialled ? "" : entry), _now);
        var fitting = Fit.Measure(reaction.Screen.Text);
        var end = reaction.Screen.Open ? "" : ", ends";
        _written.Append(CultureInfo.InvariantCulture,
            $"| {reaction.Screen.Text.Replace("\n", "\n| ", StringComparison.Ordinal)}   [{fitting.Units}{end}]\n");
        Screens.Add(reaction.Screen.Text);
        After(new Reaction(reaction.Farmer, reaction.Says, reaction.NextDue));
        _now += Duration.FromSeconds(10);
    }

    private void Pass(string line)
    {
        _written.Append(CultureInfo.InvariantCulture, $"\n{line}\n");
        var words = line.Split(' ');
        var count = int.Parse(words[1], CultureInfo.InvariantCulture);
        var unit = words[2].StartsWith("hour", StringComparison.Ordinal) ? Duration.FromHours(1) : Duration.FromDays(1);
        var end = _now + count * unit;
        while (_nextDue is { } due && due <= end)
        {
            _now = due > _now ? due : _now + Duration.FromMinutes(1);
            After(_conversation.Wake(_farmer!, _now));
        }
        _now = end;
    }

    private void After(Reaction reaction)
    {
        (_farmer, _nextDue) = (reaction.Farmer, reaction.NextDue);
        if (reaction.Says.Count > 0) _written.Append(CultureInfo.InvariantCulture, $"@ {Local(_now)}\n");
        foreach (var said in reaction.Says)
        {
            var fitting = Fit.Measure(said.Text);
            var shown = said.Text.Replace("\n", "\n  ", StringComparison.Ordinal);
            _written.Append(CultureInfo.InvariantCulture, $"< {shown}   [{fitting.Segments} x {fitting.Units}]\n");
            Messages.Add(said.Text);
        }
        var next = _nextDue is { } due ? Local(due) : "nothing";
        _written.Append(CultureInfo.InvariantCulture, $"= {Standing(_farmer)}; next {next}\n");
    }

    private static string Standing(Farmer farmer)
    {
        var heaps = farmer.Heaps.Select(heap => $", heap {heap.Number} {heap.Step}");
        var concern = farmer.Concern is { } open
            ? $", trainer told: {string.Join(" and ", open.Others.Prepend(open.Reason))}"
            : "";
        return $"{(farmer.Stopped ? "stopped" : farmer.Stage)}{string.Concat(heaps)}{concern}";
    }

    private string Local(Instant at) => Stamp.Format(at.InZone(_zone).LocalDateTime);
}
