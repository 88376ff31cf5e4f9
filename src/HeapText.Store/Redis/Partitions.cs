using HeapText.Dialog.Ports;
using StackExchange.Redis;

namespace HeapText.Store.Redis;

/// <summary>A farmer found in a sorted set by moment.</summary>
internal readonly record struct Found(int Partition, FarmerKey Key);

/// <summary>Looks into all partitions at once: the questions go out together, and cost about one round
/// trip.</summary>
internal static class Partitions
{
    /// <summary>Asks every partition.</summary>
    public static Task<T[]> All<T>(Func<int, Task<T>> ask) =>
        Task.WhenAll(Enumerable.Range(0, FarmerKey.Partitions).Select(ask));

    /// <summary>The farmers whose moment is not after the given one, earliest first over all partitions.</summary>
    /// <param name="database">The server.</param>
    /// <param name="keyOf">The sorted set of a partition.</param>
    /// <param name="upTo">The latest moment. [ms]</param>
    /// <param name="most">How many at most.</param>
    /// <returns>The farmers, and whether further ones wait. A partition gives only a share of <paramref
    /// name="most"/>; where it could have given more, nothing later than its last is let past, so the order is
    /// exact.</returns>
    public static async Task<(List<Found> Farmers, bool More)> Earliest(
        IDatabase database, Func<int, RedisKey> keyOf, long upTo, int most)
    {
        var share = Math.Min(most, 8 + (2 * most / FarmerKey.Partitions));
        var answers = await All(
            partition => database.SortedSetRangeByScoreWithScoresAsync(keyOf(partition), stop: upTo, take: share));
        var horizon = double.PositiveInfinity;
        var all = new List<(Found Farmer, double Moment)>();
        for (var partition = 0; partition < answers.Length; partition++)
        {
            var answer = answers[partition];
            if (answer.Length == share) horizon = Math.Min(horizon, answer[^1].Score);
            foreach (var entry in answer)
                all.Add((new Found(partition, Keys.FarmerOf(entry.Element!)), entry.Score));
        }
        all.RemoveAll(entry => entry.Moment > horizon);
        all.Sort((one, other) => one.Moment.CompareTo(other.Moment));
        var farmers = all.Take(most).Select(entry => entry.Farmer).ToList();
        return (farmers, double.IsFinite(horizon));
    }
}
