namespace HeapText.Service.Tests.Fakes;

/// <summary>A folder that lasts as long as its test.</summary>
internal sealed class TempFolder : IDisposable
{
    public string Path { get; } = Directory.CreateTempSubdirectory("heaptext-").FullName;

    public void Dispose() => Directory.Delete(Path, recursive: true);
}
