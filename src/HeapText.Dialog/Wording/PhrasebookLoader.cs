namespace HeapText.Dialog.Wording;

/// <summary>Reads dialogs/&lt;language&gt;/text.yml of every language and checks them all at once.</summary>
public static class PhrasebookLoader
{
    /// <summary>Reads a dialogs folder.</summary>
    /// <param name="folder">The folder that holds one folder a language.</param>
    /// <param name="materials">Keys of all materials, each of which every language must name.</param>
    /// <param name="measures">Keys of all measures.</param>
    /// <returns>The phrasebook, or null when a file cannot be used at all; and every fault found.</returns>
    public static (Phrasebook? Book, IReadOnlyList<DialogFault> Faults) Load(
        string folder, IReadOnlyCollection<string> materials, IReadOnlyCollection<string> measures)
    {
        List<DialogFault> faults = [];
        List<TextFile> files = [];
        if (Directory.Exists(folder))
        {
            foreach (var path in Directory.GetDirectories(folder).Order(StringComparer.Ordinal))
            {
                var language = Path.GetFileName(path);
                if (language == "schema") continue;
                if (TextFileLoader.Load(Path.Combine(path, "text.yml"), faults) is not { } file) continue;
                if (file.Language != language)
                    faults.Add(new(file.Path, 1, 1, $"language is '{file.Language}', but the folder is '{language}'"));
                files.Add(file);
            }
        }
        if (files.Count == 0) faults.Add(new(folder, 1, 1, "no folder with a text.yml in it"));
        if (faults.Count > 0) return (null, faults);

        foreach (var file in files) faults.AddRange(new TextFileCheck(file, materials, measures).KeyFaults());
        if (faults.Count > 0) return (null, faults);

        var book = new Phrasebook(files);
        foreach (var file in files) faults.AddRange(new WorstCase(book, file).Faults());
        return (book, faults);
    }
}
