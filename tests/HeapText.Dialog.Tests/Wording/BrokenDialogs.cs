using HeapText.Dialog.Engine;
using HeapText.Dialog.Lint;

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
        Change(file, text =>
        {
            Assert.Contains(old, text, StringComparison.Ordinal);
            return text.Replace(old, changed, StringComparison.Ordinal);
        });
        return this;
    }

    public void Change(string file, Func<string, string> change)
    {
        var path = System.IO.Path.Combine(_folder, file);
        File.WriteAllText(path, change(File.ReadAllText(path)));
    }

    public DialogLint Lint() => DialogLint.Check(_folder);

    public IReadOnlyList<DialogFault> Faults() => DialogSet.Load(_folder).Faults;

    public void Dispose() => Directory.Delete(_folder, recursive: true);
}
