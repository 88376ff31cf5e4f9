namespace HeapText.Agronomy.Heap;

/// <summary>The method that suits a place, and why.</summary>
/// <param name="Key">Key of one of <see cref="HeapMethods.All"/>.</param>
/// <param name="Reasons">Keys of what spoke for it, from <see cref="MethodReasons"/>; at least one.</param>
/// <param name="RunnersUp">Keys of methods that also suit the place, best first.</param>
/// <remarks>
/// Total: every place gets a method, and what is not known decides nothing. First row that holds:
/// <code>
/// rain   water    labour     heap       method             also
/// any    any      any        below 1 m3 small-ring         what would suit were there 1 m3
/// Dry    Far      any        any        dry-season-pit     slow-heap
/// any    any      Little     any        slow-heap          dry-season-pit
/// Dry    unknown  any        any        dry-season-pit     daily-then-weekly, slow-heap
/// any    Near     Often      any        hot-turned         daily-then-weekly
/// any    any      any        any        daily-then-weekly  hot-turned, slow-heap
/// </code>
/// Among "also", the pit counts only where the rain is known and not heavy, and hot-turned only where someone can
/// turn often and water is not far.
/// <para>Sources: a pit where it is dry, a heap where it is wet [DRYPIT] [MULLER]; pits fill with water in heavy rain
/// [HOWARD]; a heap of at least 1 m3 [MULLER]. What labour and the way to the water decide: common practice, no
/// source.</para>
/// </remarks>
public sealed record MethodChoice(string Key, IReadOnlyList<string> Reasons, IReadOnlyList<string> RunnersUp)
{
    private const string Hot = "hot-turned";
    private const string Usual = HeapMethods.UsualKey;
    private const string Slow = "slow-heap";
    private const string Pit = "dry-season-pit";
    private const string Ring = "small-ring";

    /// <summary>The method for a place.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The litres are negative or no number.</exception>
    public static MethodChoice For(HeapSite site)
    {
        if (site.Litres is { } litres)
        {
            ArgumentOutOfRangeException.ThrowIfNegative(litres);
            ArgumentOutOfRangeException.ThrowIfEqual(litres, double.NaN);
            if (litres < HeapMethods.Usual.Bounds.LeastLitres) return Small(site, litres);
        }

        var choice = (site.Rain, site.Water, site.Labour) switch
        {
            (Rain.Dry, Water.Far, _) => Of(Pit, [MethodReasons.DrySeason, MethodReasons.WaterFar], Slow),
            (_, _, Labour.Little) => Of(Slow, [MethodReasons.LittleLabour], Pit),
            (Rain.Dry, null, _) => Of(Pit, [MethodReasons.DrySeason], Usual, Slow),
            (_, Water.Near, Labour.Often) => Of(Hot, [MethodReasons.WaterNear, MethodReasons.OftenLabour], Usual),
            _ => Of(Usual, [MethodReasons.Usual], Hot, Slow),
        };
        return choice with
        {
            Reasons = site.Rain == Rain.Heavy ? [.. choice.Reasons, MethodReasons.HeavyRain] : choice.Reasons,
            RunnersUp = [.. choice.RunnersUp.Where(key => Suits(key, site))],
        };
    }

    private static MethodChoice Small(HeapSite site, double litres)
    {
        var isEnough = litres >= HeapMethods.All[Ring].Bounds.LeastLitres;
        var more = For(site with { Litres = null });
        return Of(Ring, [isEnough ? MethodReasons.LittleMaterial : MethodReasons.GatherMore], more.Key);
    }

    private static bool Suits(string key, HeapSite site) => key switch
    {
        Pit => site.Rain is Rain.Dry or Rain.Some,
        Hot => site is { Labour: Labour.Often, Water: not Water.Far },
        _ => true,
    };

    private static MethodChoice Of(string key, string[] reasons, params string[] also) => new(key, reasons, also);
}
