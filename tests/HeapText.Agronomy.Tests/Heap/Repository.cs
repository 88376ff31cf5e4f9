namespace HeapText.Agronomy.Tests.Heap;

/// <summary>Files of the checkout.</summary>
internal static class Repository
{
    internal static string Path(params string[] parts)
    {
        var folder = AppContext.BaseDirectory;
        while (!File.Exists(System.IO.Path.Combine(folder, "HeapText.sln")))
            folder = System.IO.Path.GetDirectoryName(folder) ?? throw new InvalidOperationException("No HeapText.sln.");
        return System.IO.Path.Combine([folder, .. parts]);
    }

    /// <summary>Compares a page of docs with what it must be; HEAPTEXT_ACCEPT=1 writes it anew.</summary>
    internal static void AssertPage(string wanted, params string[] parts)
    {
        if (Environment.GetEnvironmentVariable("HEAPTEXT_ACCEPT") == "1") File.WriteAllText(Path(parts), wanted);
        else Assert.Equal(wanted, File.ReadAllText(Path(parts)));
    }
}
