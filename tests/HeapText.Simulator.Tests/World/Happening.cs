namespace HeapText.Simulator.Tests.World;

/// <summary>One thing that happens in a scenario; leaving one out gives a smaller scenario.</summary>
internal abstract record Happening
{
    private Happening() { }

    /// <summary>A farmer is there from the start.</summary>
    /// <param name="Farmer">Its place.</param>
    /// <param name="Village">Of the four.</param>
    /// <param name="Opening">How far the farmer has come.</param>
    public sealed record Lives(int Farmer, int Village, Opening Opening) : Happening;

    /// <summary>Something that happens at a moment.</summary>
    /// <param name="Seconds">Since the start.</param>
    public abstract record Timed(double Seconds) : Happening;

    /// <summary>A text comes in; the same id again is the same text again.</summary>
    public sealed record Texts(double Seconds, int Farmer, string Id, string Text) : Timed(Seconds);

    /// <summary>A missed call comes in.</summary>
    public sealed record Calls(double Seconds, int Farmer, string Id) : Timed(Seconds);

    /// <summary>A step on a dialled screen comes in; the same step again is the same entry again.</summary>
    public sealed record Dials(double Seconds, int Farmer, string Session, int Step, string Entry) : Timed(Seconds);

    /// <summary>The wall clock is set.</summary>
    public sealed record ClockSet(double Seconds, TimeSpan By) : Timed(Seconds);

    /// <summary>A village's time zone is set anew.</summary>
    public sealed record ZoneSet(double Seconds, int Village, int Zone) : Timed(Seconds);

    /// <summary>An instance is killed, and starts again later.</summary>
    public sealed record Killed(double Seconds, int Instance, double DownSeconds) : Timed(Seconds);

    /// <summary>An instance stands still.</summary>
    public sealed record Paused(double Seconds, int Instance, double ForSeconds) : Timed(Seconds);

    /// <summary>The store takes nothing.</summary>
    public sealed record StoreGone(double Seconds, double ForSeconds) : Timed(Seconds);

    /// <summary>Something goes wrong with a call to the store, by its place among all calls.</summary>
    public sealed record CallFails(int Call, CallFault Fault) : Happening;

    /// <summary>Something goes wrong with a send, by its place among all sends.</summary>
    public sealed record SendFails(int Send, SendFault Fault) : Happening;
}

/// <summary>How far a farmer has come at the start.</summary>
internal enum Opening
{
    Stranger,
    StockBegun,
    RecipeSent,
    BuiltYesterday,
    FirstTurningToday,
    TurnedOnce,
}

/// <summary>What goes wrong with a call to the store.</summary>
internal enum CallFault
{
    KilledBefore,
    KilledAfter,
    TimedOutThoughDone,
    Unavailable,
    Conflict,
}

/// <summary>What goes wrong with a send.</summary>
internal enum SendFault
{
    KilledBefore,
    KilledAfter,
    TakenWithoutAnswer,
    LostWithoutAnswer,
    TakenThenLinkLost,
    LinkLost,
    Busy,
    BusyForMinutes,
    Refused,
    Slow,
    Throws,
}
