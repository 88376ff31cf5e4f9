using System.Diagnostics;
using System.Net.Http.Headers;

namespace HeapText.Benchmarks.Hook;

/// <summary>Calls something from many sides at once for a while and counts.</summary>
internal static class Load
{
    /// <summary>Posts farmers' texts; calls a second.</summary>
    public static async Task<double> Post(Uri url, TimeSpan time, int connections)
    {
        using var handler = new SocketsHttpHandler { MaxConnectionsPerServer = connections };
        using var client = new HttpClient(handler);
        return await Call(async text =>
        {
            using var body = new ByteArrayContent(text.Body);
            body.Headers.ContentType = new MediaTypeHeaderValue("application/json");
            using var answer = await client.PostAsync(url, body);
            answer.EnsureSuccessStatusCode();
        }, time, connections);
    }

    /// <summary>Calls with a farmer's next text each time; calls a second.</summary>
    public static async Task<double> Call(Func<FarmerText, Task> call, TimeSpan time, int sides)
    {
        var clock = Stopwatch.StartNew();
        var counts = await Task.WhenAll(Enumerable.Range(0, sides).Select(side => Task.Run(async () =>
        {
            var count = 0L;
            foreach (var text in FarmerText.Endless(side))
            {
                if (clock.Elapsed >= time) break;
                await call(text);
                count++;
            }
            return count;
        })));
        return counts.Sum() / clock.Elapsed.TotalSeconds;
    }
}
