using System.Text;

namespace HeapText.Dialog.Replies;

/// <summary>The keys that data files, the command line and code share for measures, checks and intents.</summary>
/// <remarks>Materials are left out on purpose: their keys belong to the material table.</remarks>
public static class Canonical
{
    /// <summary>Keys of the measures.</summary>
    public static IReadOnlySet<string> Measures { get; } = new HashSet<string>(StringComparer.Ordinal)
    {
        "wheelbarrow", "bucket", "small-bucket", "jerrycan", "basin", "sack", "small-sack", "headload", "bundle",
        "armful", "handful", "basket", "shovel", "ox-cart", "donkey-cart", "kg", "litre",
    };

    /// <summary>The key of an intent or an answer, such as <c>new-heap</c> or <c>ants-termites</c>.</summary>
    public static string Key<T>(T value) where T : struct, Enum => Keys<T>.ByValue[value];

    /// <summary>Reads a key back; false when there is no such key.</summary>
    public static bool TryValue<T>(string key, out T value) where T : struct, Enum =>
        Keys<T>.ByKey.TryGetValue(key, out value);

    private static class Keys<T> where T : struct, Enum
    {
        public static readonly Dictionary<T, string> ByValue =
            Enum.GetValues<T>().ToDictionary(value => value, value => Kebab(value.ToString()));

        public static readonly Dictionary<string, T> ByKey =
            ByValue.ToDictionary(pair => pair.Value, pair => pair.Key, StringComparer.Ordinal);
    }

    private static string Kebab(string name)
    {
        var key = new StringBuilder(name.Length + 2);
        foreach (var c in name)
        {
            if (char.IsUpper(c) && key.Length > 0)
                key.Append('-');
            key.Append(char.ToLowerInvariant(c));
        }

        return key.ToString();
    }
}
