namespace HeapText.Service.Verbs;

/// <summary>Finds the folder that holds the words of every language.</summary>
internal static class DialogsFolder
{
    private const string Name = "dialogs";

    /// <summary>The folder next to the executable, else the nearest one above it or above the working folder.</summary>
    /// <returns>Its full path; null when there is none.</returns>
    public static string? Find() => FindFrom(AppContext.BaseDirectory) ?? FindFrom(Directory.GetCurrentDirectory());

    /// <summary>The nearest dialogs folder at or above a place.</summary>
    internal static string? FindFrom(string place)
    {
        for (var folder = new DirectoryInfo(place); folder is not null; folder = folder.Parent)
        {
            var dialogs = Path.Combine(folder.FullName, Name);
            if (Directory.Exists(dialogs) && Directory.EnumerateFiles(dialogs, "words.yml", OneDown).Any())
                return dialogs;
        }

        return null;
    }

    private static readonly EnumerationOptions OneDown = new()
    {
        RecurseSubdirectories = true,
        MaxRecursionDepth = 1,
        IgnoreInaccessible = true,
    };
}
