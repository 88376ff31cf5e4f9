using System.Globalization;
using System.Text;
using StackExchange.Redis;

namespace HeapText.Store.Tests.Redis;

/// <summary>A server's keys as plain commands that any version of it takes, one to a line; without expiry.</summary>
internal static class ServerDump
{
    /// <summary>The commands that make all keys.</summary>
    public static async Task<List<string>> Write(string connection)
    {
        using var server = await ConnectionMultiplexer.ConnectAsync(connection);
        var database = server.GetDatabase();
        var lines = new List<string>();
        await foreach (var key in server.GetServers()[0].KeysAsync())
            lines.Add(string.Join(' ', (await Command(database, key)).Select(part => Quoted(part!))));
        lines.Sort(StringComparer.Ordinal);
        return lines;
    }

    /// <summary>Runs the commands.</summary>
    public static async Task Read(string connection, IEnumerable<string> lines)
    {
        using var server = await ConnectionMultiplexer.ConnectAsync(connection);
        foreach (var line in lines)
        {
            var parts = Parts(line);
            await server.GetDatabase().ExecuteAsync(
                Encoding.ASCII.GetString(parts[0]), [.. parts.Skip(1).Cast<object>()]);
        }
    }

    /// <summary>The kind of key that a command makes: its name without what differs from farmer to farmer.</summary>
    public static string KindOf(string line)
    {
        var key = Encoding.Latin1.GetString(Parts(line)[1]);
        var fixedPart = key.IndexOf('}', StringComparison.Ordinal) is > 0 and var end
            ? key[..Math.Min(key.Length, end + 4)]
            : key;
        return string.Concat(fixedPart.Select(c => char.IsAsciiDigit(c) ? '0' : c));
    }

    private static async Task<RedisValue[]> Command(IDatabase database, RedisKey key)
    {
        RedisValue name = (byte[])key!;
        return await database.KeyTypeAsync(key) switch
        {
            RedisType.String => ["SET", name, await database.StringGetAsync(key)],
            RedisType.Hash => ["HSET", name, .. (await database.HashGetAllAsync(key))
                .SelectMany(one => new[] { one.Name, one.Value })],
            RedisType.List => ["RPUSH", name, .. await database.ListRangeAsync(key)],
            RedisType.Set => ["SADD", name, .. await database.SetMembersAsync(key)],
            RedisType.SortedSet => ["ZADD", name, .. (await database.SortedSetRangeByRankWithScoresAsync(key))
                .SelectMany(one => new[] { (RedisValue)one.Score, one.Element })],
            var other => throw new InvalidOperationException($"No plain command makes a {other}."),
        };
    }

    private static string Quoted(byte[] part) => $"\"{string.Concat(part.Select(one =>
        one is >= 0x20 and < 0x7F and not (byte)'"' and not (byte)'\\'
            ? ((char)one).ToString()
            : string.Create(CultureInfo.InvariantCulture, $"\\x{one:x2}")))}\"";

    private static List<byte[]> Parts(string line) =>
        [.. line[1..^1].Split("\" \"").Select(part =>
        {
            var bytes = new List<byte>();
            for (var i = 0; i < part.Length; i++)
            {
                var isEscape = part[i] == '\\';
                bytes.Add(isEscape ? Convert.FromHexString(part.AsSpan(i + 2, 2))[0] : (byte)part[i]);
                if (isEscape) i += 3;
            }
            return bytes.ToArray();
        })];
}
