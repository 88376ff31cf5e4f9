using HeapText.Dialog.Engine;

namespace HeapText.Dialog.Tests.Wording;

/// <summary>A copy of the dialogs folder in which one thing is made wrong.</summary>
internal sealed class BrokenDialogs : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("dialogs").FullName;

    public BrokenDialogs()
    {
        foreach (var language in Directory.GetDirectories(Repository.Path("dialogs")))
        {
            var copy = Directory.CreateDirectory(System.IO.Path.Combine(_folder, System.IO.Path.GetFileName(language)));
            foreach (var file in Directory.GetFiles(language))
                File.Copy(file, System.IO.Path.Combine(copy.FullName, System.IO.Path.GetFileName(file)));
        }
    }

    public BrokenDialogs Replace(string file, string old, string changed)
    {
        var path = System.IO.Path.Combine(_folder, file);
        var text = File.ReadAllText(path);
        Assert.Contains(old, text, StringComparison.Ordinal);
        File.WriteAllText(path, text.Replace(old, changed, StringComparison.Ordinal));
        return this;
    }

    public IReadOnlyList<DialogFault> Faults() => DialogSet.Load(_folder).Faults;

    public void Dispose() => Directory.Delete(_folder, recursive: true);
}
