namespace HeapText.Agronomy.Tests;

/// <summary>Where the checkout is.</summary>
internal static class Repository
{
    internal static string Path(params string[] parts) => System.IO.Path.Combine([FindRoot(), .. parts]);

    private static string FindRoot()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(System.IO.Path.Combine(folder.FullName, "HeapText.sln")))
            folder = folder.Parent;
        return folder?.FullName ?? throw new InvalidDataException("HeapText.sln is in no folder above the tests.");
    }
}
