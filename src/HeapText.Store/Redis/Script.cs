using System.Reflection;
using System.Security.Cryptography;
using System.Text;
using StackExchange.Redis;

namespace HeapText.Store.Redis;

/// <summary>One script of the Scripts folder; its keys, arguments and result stand at its head.</summary>
internal sealed class Script
{
    public static readonly Script Begin = new("begin");
    public static readonly Script Commit = new("commit");
    public static readonly Script Claim = new("claim");
    public static readonly Script Take = new("take");
    public static readonly Script Settle = new("settle");
    public static readonly Script GiveBack = new("giveback");
    public static readonly Script Find = new("find");
    public static readonly Script Refer = new("refer");
    public static readonly Script Swap = new("swap");
    public static readonly Script Allow = new("allow");
    public static readonly Script TakeOff = new("takeoff");
    public static readonly Script Wake = new("wake");
    public static readonly Script Copy = new("copy");

    private readonly string _text;
    private readonly byte[] _hash;

    private Script(string name)
    {
        var assembly = Assembly.GetExecutingAssembly();
        var resource = assembly.GetManifestResourceNames()
            .Single(candidate => candidate.EndsWith($".{name}.lua", StringComparison.Ordinal));
        using var reader = new StreamReader(assembly.GetManifestResourceStream(resource)!);
        _text = reader.ReadToEnd();
#pragma warning disable CA5350 // SHA-1 is how the server names a script
        _hash = SHA1.HashData(Encoding.UTF8.GetBytes(_text));
#pragma warning restore CA5350
    }

    /// <summary>Runs it by its hash, in one round trip; with its text where the server does not know it
    /// yet.</summary>
    public async Task<RedisResult> Run(IDatabase database, RedisKey[] keys, RedisValue[] values)
    {
        try
        {
            return await database.ScriptEvaluateAsync(_hash, keys, values);
        }
        catch (RedisServerException e) when (e.Message.StartsWith("NOSCRIPT", StringComparison.Ordinal))
        {
            object[] arguments = [_text, keys.Length, .. keys.Cast<object>(), .. values.Cast<object>()];
            return await database.ExecuteAsync("EVAL", arguments);
        }
    }
}
