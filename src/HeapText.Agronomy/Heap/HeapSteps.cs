namespace HeapText.Agronomy.Heap;

/// <summary>Steps of work on a heap, which an action holds and a farmer may just have done.</summary>
[Flags]
public enum HeapSteps
{
    /// <summary>No work.</summary>
    None = 0,

    /// <summary>Turning.</summary>
    Turn = 1,

    /// <summary>Watering.</summary>
    Water = 2,

    /// <summary>Adding dry coarse stuff against the wet.</summary>
    Dry = 4,

    /// <summary>Adding brown stuff against ammonia.</summary>
    Brown = 8,

    /// <summary>Adding green stuff or dung.</summary>
    Feed = 16,

    /// <summary>Making it bigger.</summary>
    Size = 32,

    /// <summary>Covering with soil.</summary>
    Soil = 64,

    /// <summary>Keeping rain off.</summary>
    Roof = 128,

    /// <summary>Emptying a pit of its water.</summary>
    Drain = 256,

    /// <summary>Taking food out.</summary>
    Food = 512,

    /// <summary>Looking deep inside.</summary>
    Look = 1024,

    /// <summary>Trying whether it is ready.</summary>
    Test = 2048,
}
