using System.Globalization;
using HeapText.Dialog.Ports;

namespace HeapText.Simulator.Tests.Running;

/// <summary>What is told of a simulation.</summary>
internal sealed partial class Simulation
{
    private readonly Trace? _trace;
    private readonly Dictionary<string, int> _met = [];

    /// <summary>Notes what an instance did.</summary>
    public void Note(Instance instance, string what, FarmerKey? who, object? how = null, object? more = null)
    {
        if (_trace is null) return;
        var name = who is { } key ? Rules.NameOf(key) : "";
        _trace.Add(Timeline, $"i{instance.Number} {what} {name} {Rules.Tell(how)} {Rules.Tell(more)}");
    }

    private void Note(string what) => _trace?.Add(Timeline, what);

    private T Met<T>(string where, T fault)
    {
        var name = $"{where}: {fault}";
        _met[name] = _met.GetValueOrDefault(name) + 1;
        return fault;
    }
}

/// <summary>The story of a simulation, line by line.</summary>
internal sealed class Trace
{
    private readonly List<string> _lines = [];

    public IReadOnlyList<string> Lines => _lines;

    public void Add(Timeline timeline, string what)
    {
        var at = TimeSpan.FromTicks(timeline.Elapsed);
        var line = string.Create(
            CultureInfo.InvariantCulture, $"{at:d\\.hh\\:mm\\:ss\\.fff} [{timeline.Wall:MM-dd HH:mm:ss}Z] {what}");
        _lines.Add(line.TrimEnd());
    }
}

/// <summary>How a simulation ended.</summary>
/// <param name="Broken">The rule that was broken; null when none was.</param>
/// <param name="Steps">Steps taken.</param>
/// <param name="Messages">Messages that came to the gateway.</param>
/// <param name="Overtaken">Reminders that were sent although the farmer had reported since.</param>
/// <param name="Elapsed">Time that passed in it. [ticks]</param>
/// <param name="Faults">Faults met, by kind.</param>
internal sealed record Outcome(
    string? Broken, int Steps, int Messages, int Overtaken, long Elapsed, IReadOnlyDictionary<string, int> Faults);
