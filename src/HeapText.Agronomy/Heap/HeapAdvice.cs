namespace HeapText.Agronomy.Heap;

/// <summary>What one check of heat, smell and moisture asks for: one piece of advice, never two that
/// disagree.</summary>
/// <param name="Key">Key of the advice.</param>
/// <param name="TurnNow">True when a turning should not wait for its planned day.</param>
/// <remarks>
/// Sources, keyed in docs/agronomy/sources.md. Ammonia is too much nitrogen, add brown matter; crumbling is under 40 %
/// moisture, streaming over 65 %: common extension advice, from memory. Rotten is lack of air: [TOFG], [HESPERIAN].
/// Very hot and dry: turn and water [NGEZE]. No heat is too little or too much water, or too little nitrogen
/// [HESPERIAN p. 403]. Flies: cover with soil; ants: too dry [HESPERIAN p. 403].
/// </remarks>
public readonly record struct HeapAdvice(string Key, bool TurnNow)
{
    /// <summary>All advice keys.</summary>
    public static IReadOnlyList<string> Keys { get; } =
    [
        "good", "hot-dry", "dry", "ammonia", "ammonia-dry", "rotten", "rotten-dry", "sour", "sour-dry", "dripping",
        "wet", "feed", "cool", "flies", "rats", "ants-termites",
    ];

    /// <summary>Advice on a check. Smell of a fault goes first, then moisture, then heat; what was not reported is
    /// taken as being in order.</summary>
    /// <param name="heat">As felt, or null.</param>
    /// <param name="smell">As smelt, or null.</param>
    /// <param name="moisture">As squeezed, or null.</param>
    /// <param name="turningsDone">True when the planned turnings are done, and less heat is expected.</param>
    public static HeapAdvice For(Heat? heat, Smell? smell, Moisture? moisture, bool turningsDone)
    {
        var dry = moisture is Moisture.Dry;
        return (smell, moisture, heat) switch
        {
            (Smell.Ammonia, _, _) => new(dry ? "ammonia-dry" : "ammonia", true),
            (Smell.Rotten, _, _) => new(dry ? "rotten-dry" : "rotten", true),
            (Smell.Sour, _, _) => new(dry ? "sour-dry" : "sour", true),
            (_, Moisture.Dripping, _) => new("dripping", true),
            (_, Moisture.Dry, Heat.Hot) => new("hot-dry", true),
            (_, Moisture.Dry, _) => new("dry", true),
            (_, Moisture.Wet, _) => new("wet", false),
            (_, _, Heat.Cool or Heat.Cold) => turningsDone ? new("cool", false) : new("feed", false),
            _ => new("good", false),
        };
    }

    /// <summary>Advice on animals seen; null when none were.</summary>
    public static HeapAdvice? For(Pests? pests) => pests switch
    {
        Pests.Flies => new("flies", false),
        Pests.Rats => new("rats", false),
        Pests.AntsTermites => new("ants-termites", false),
        _ => null,
    };
}
