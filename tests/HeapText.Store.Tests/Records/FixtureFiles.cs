using System.Globalization;
using System.Runtime.CompilerServices;

namespace HeapText.Store.Tests.Records;

/// <summary>Files of every format ever released, which stay readable. None is ever changed; HEAPTEXT_ACCEPT=1 adds
/// what is missing.</summary>
internal static class FixtureFiles
{
    /// <summary>True when what is missing is to be written.</summary>
    public static bool Accepts => Environment.GetEnvironmentVariable("HEAPTEXT_ACCEPT") == "1";

    /// <summary>The files of a name, oldest first: NAME.EXT, NAME-2.EXT, NAME-3.EXT and so on.</summary>
    public static List<string> Of(string folder, string name, string extension) =>
        [.. Enumerable.Range(1, 99).Select(n => Path.Combine(Folder(), folder, Numbered(name, n) + extension))
            .TakeWhile(File.Exists)];

    /// <summary>Writes the next file of a name.</summary>
    public static void Add(string folder, string name, string extension, byte[] content)
    {
        var next = Of(folder, name, extension).Count + 1;
        Directory.CreateDirectory(Path.Combine(Folder(), folder));
        File.WriteAllBytes(Path.Combine(Folder(), folder, Numbered(name, next) + extension), content);
    }

    /// <summary>What to do about a missing one.</summary>
    public static string Missing(string name) =>
        $"{name} is new or has changed, and no fixture holds it. Run the tests of the store once with "
        + "HEAPTEXT_ACCEPT=1, and commit the file that they add under Fixtures. Change none that is there.";

    private static string Numbered(string name, int n) =>
        n == 1 ? name : string.Create(CultureInfo.InvariantCulture, $"{name}-{n}");

    private static string Folder([CallerFilePath] string here = "") =>
        Path.Combine(Path.GetDirectoryName(here)!, "..", "Fixtures");
}
