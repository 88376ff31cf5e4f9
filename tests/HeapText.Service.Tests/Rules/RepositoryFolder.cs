namespace HeapText.Service.Tests.Rules;

/// <summary>Where the checkout is.</summary>
internal static class RepositoryFolder
{
    public static string Find()
    {
        var folder = AppContext.BaseDirectory;
        while (!File.Exists(Path.Combine(folder, "HeapText.sln")))
            folder = Path.GetDirectoryName(folder) ?? throw new InvalidOperationException("No HeapText.sln.");
        return folder;
    }
}
