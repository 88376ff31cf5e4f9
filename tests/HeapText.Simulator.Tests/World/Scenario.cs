using NodaTime;

namespace HeapText.Simulator.Tests.World;

/// <summary>All that a simulation is given from outside. What is left to chance in between, such as which of two steps
/// goes first, is drawn from the seed.</summary>
/// <param name="Seed">Drawn from.</param>
/// <param name="Start">When it starts.</param>
/// <param name="Instances">How many instances share the store.</param>
/// <param name="Happenings">What happens.</param>
internal sealed record Scenario(int Seed, Instant Start, int Instances, IReadOnlyList<Happening> Happenings)
{
    /// <summary>After this much time nothing goes wrong any more.</summary>
    public static readonly TimeSpan Faulty = TimeSpan.FromDays(5);

    /// <summary>Time for all that was held up to come to rest.</summary>
    public static readonly TimeSpan Quiet = TimeSpan.FromHours(30.5);
}
