using System.Globalization;

namespace HeapText.Simulator.Tests.World;

/// <summary>Writes the scenario of a seed.</summary>
internal sealed class ScenarioWriter
{
    private const double Hour = 3600;
    private const double Day = 24 * Hour;
    private const int MostCalls = 240;
    private const int MostSends = 40;

    private static readonly string[] Texts =
    [
        "yes", "no", "1", "2", "3", "4", "5", "0", "1.5", "3 sacks", "stop", "start", "help", "person", "built",
        "built yesterday", "turned", "later", "next", "amounts", "is it ready", "new heap", "hot", "cold and dry",
        "smells like urine", "rotten", "flies", "i burnt my hand", "sawdust 4 dung 3", "some goat droppings",
        "plastic", "xkqj wpp", "", "nimejenga", "nimegeuza", "moto", "how much for maize", "crop", "method", "hour",
        "rod", "20 by 4 steps", "i see smoke", "dry grass", "heap 2 is hot", "join 41", "join 42", "join 44",
        "14 wheelbarrows dry grass, 10 wheelbarrows green weeds, 8 buckets goat manure, 2 buckets wood ash",
    ];

    /// <summary>What a farmer who does as he is told would text.</summary>
    private static readonly string[] Willing = ["turned", "turned", "hot", "1", "1", "2", "stop", "built", "next"];

    private static readonly string[] Entries = ["1", "2", "3", "4", "0", "#", "9", "14", "20"];

    private readonly Random _random;
    private readonly List<Happening> _happenings = [];
    private readonly int _farmers;
    private readonly int _instances;
    private int _ids;

    private ScenarioWriter(int seed)
    {
        _random = new Random(seed);
        _farmers = _random.Next(2, 5);
        _instances = _random.NextDouble() < 0.7 ? 2 : 1;
    }

    public static Scenario Of(int seed)
    {
        var writer = new ScenarioWriter(seed);
        var start = Villages.Starts[writer._random.Next(Villages.Starts.Length)];
        writer.Write();
        return new Scenario(seed, start, writer._instances, writer._happenings);
    }

    private void Write()
    {
        for (var farmer = 0; farmer < _farmers; farmer++)
        {
            var opening = (Opening)_random.Next(Enum.GetValues<Opening>().Length);
            var village = _random.Next(Villages.Zones.Length);
            _happenings.Add(new Happening.Lives(farmer, village, opening));
            if (opening == Opening.Stranger) Join(farmer, village);
            for (var texts = _random.Next(1, 6); texts > 0; texts--) Text(farmer, AnyTime(), AnyText());
            if (_random.NextDouble() < 0.25) Dial(farmer);
            if (_random.NextDouble() < 0.15) Add(new Happening.Calls(AnyTime(), farmer, NewId()));
        }
        for (var faults = _random.Next(0, 7); faults > 0; faults--) _happenings.Add(AnyTimedFault());
        for (var faults = _random.Next(0, 5); faults > 0; faults--)
            _happenings.Add(new Happening.CallFails(_random.Next(MostCalls), Any<CallFault>()));
        for (var faults = _random.Next(0, 6); faults > 0; faults--)
            _happenings.Add(new Happening.SendFails(_random.Next(MostSends), Any<SendFault>()));
    }

    private void Join(int farmer, int village)
    {
        var at = AnyTime() / 2;
        var code = Villages.FirstCode + village;
        Text(farmer, at, string.Create(CultureInfo.InvariantCulture, $"join {code}"));
        Text(farmer, at + Within(5 * Hour), "yes");
    }

    private void Text(int farmer, double at, string text)
    {
        var first = new Happening.Texts(at, farmer, NewId(), text);
        Add(first);
        if (_random.NextDouble() < 0.15) Text(farmer, at + Within(3), AnyText());
        if (_random.NextDouble() >= 0.25) return;
        double[] laters = [0, Within(2), Within(600), Within(6 * Hour), Within(4 * Day)];
        Add(first with { Seconds = at + laters[_random.Next(laters.Length)] });
    }

    private void Dial(int farmer)
    {
        var (session, at) = (NewId(), AnyTime());
        for (var step = 1; step <= 7; step++)
        {
            at += 2 + Within(20);
            var entry = step == 1 ? "" : Entries[_random.Next(Entries.Length)];
            var dials = new Happening.Dials(at, farmer, session, step, entry);
            var luck = _random.NextDouble();
            if (luck >= 0.1) Add(dials);
            if (luck >= 0.85) Add(dials with { Seconds = at + Within(30) });
        }
    }

    private Happening AnyTimedFault()
    {
        // Half of the faults come when something else does, where they hurt most.
        var timed = _happenings.OfType<Happening.Timed>().ToList();
        var at = _random.NextDouble() < 0.5 && timed.Count > 0
            ? timed[_random.Next(timed.Count)].Seconds + Within(2)
            : AnyTime();
        return _random.Next(8) switch
        {
            0 => new Happening.ClockSet(at, AnyClockStep()),
            1 => new Happening.ZoneSet(
                at, _random.Next(Villages.Zones.Length), _random.Next(Villages.Zones.Length)),
            2 or 3 => new Happening.Killed(at, _random.Next(_instances), 1 + Within(120)),
            4 or 5 => new Happening.Paused(at, _random.Next(_instances), 5 + Within(90)),
            _ => new Happening.StoreGone(at, 1 + Within(_random.Next(2) == 0 ? 60 : 3 * Hour)),
        };
    }

    private TimeSpan AnyClockStep()
    {
        TimeSpan[] steps = [TimeSpan.FromHours(1), TimeSpan.FromDays(1)];
        var by = steps[_random.Next(steps.Length)];
        return _random.Next(2) == 0 ? by : -by;
    }

    /// <summary>Any moment, or one close to a farmer's hour for reminders in one of the zones.</summary>
    private double AnyTime()
    {
        var until = Scenario.Faulty.TotalSeconds - Hour;
        if (_random.Next(3) > 0) return Within(until);
        return (_random.Next(4) * Day) + (_random.Next(-1, 10) * Hour) + Hour + Within(30);
    }

    private string AnyText() => _random.Next(2) == 0
        ? Willing[_random.Next(Willing.Length)]
        : Texts[_random.Next(Texts.Length)];

    private T Any<T>()
        where T : struct, Enum
    {
        var all = Enum.GetValues<T>();
        return all[_random.Next(all.Length)];
    }

    private void Add(Happening.Timed timed)
    {
        var latest = Scenario.Faulty.TotalSeconds - Hour;
        _happenings.Add(timed with { Seconds = Math.Min(timed.Seconds, latest) });
    }

    private double Within(double seconds) => Math.Round(_random.NextDouble() * seconds, 3);

    private string NewId() => string.Create(CultureInfo.InvariantCulture, $"in{++_ids}");
}
