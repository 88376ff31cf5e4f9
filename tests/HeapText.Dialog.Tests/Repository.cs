using HeapText.Dialog.Engine;

namespace HeapText.Dialog.Tests;

/// <summary>Where the checkout is, and what stands in its dialogs folder.</summary>
internal static class Repository
{
    public static string Root { get; } = FindRoot();

    public static DialogSet Dialogs { get; } = LoadDialogs();

    public static string Path(params string[] parts) => System.IO.Path.Combine([Root, .. parts]);

    private static DialogSet LoadDialogs()
    {
        var (dialogs, faults) = DialogSet.Load(Path("dialogs"));
        return dialogs ?? throw new InvalidDataException(string.Join("\n", faults));
    }

    private static string FindRoot()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(System.IO.Path.Combine(folder.FullName, "HeapText.sln")))
            folder = folder.Parent;
        return folder?.FullName ?? throw new InvalidDataException("HeapText.sln is in no folder above the tests.");
    }
}
