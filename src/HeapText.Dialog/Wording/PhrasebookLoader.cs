namespace HeapText.Dialog.Wording;

/// <summary>Reads dialogs/&lt;language&gt;/text.yml of every language and checks them all at once.</summary>
public static class PhrasebookLoader
{
    /// <summary>Reads a dialogs folder.</summary>
    /// <param name="folder">The folder that holds one folder a language.</param>
    /// <param name="materials">Keys of all materials, each of which every language must name.</param>
    /// <param name="measures">Keys of all measures.</param>
    public static PhrasebookLoad Load(
        string folder, IReadOnlyCollection<string> materials, IReadOnlyCollection<string> measures)
    {
        List<DialogFault> faults = [];
        var files = Directory.Exists(folder) ? ReadAll(folder, faults) : [];
        if (files.Count == 0) faults.Add(new(folder, 1, 1, "no folder with a text.yml in it"));
        if (faults.Count > 0) return new PhrasebookLoad(null, files, faults);

        foreach (var file in files) faults.AddRange(new TextFileCheck(file, materials, measures).KeyFaults());
        if (faults.Count > 0) return new PhrasebookLoad(null, files, faults);

        var book = new Phrasebook(files);
        foreach (var file in files) faults.AddRange(new WorstCase(book, file).Faults());
        return new PhrasebookLoad(book, files, faults);
    }

    private static List<TextFile> ReadAll(string folder, List<DialogFault> faults)
    {
        List<TextFile> files = [];
        foreach (var path in Directory.GetDirectories(folder).Order(StringComparer.Ordinal))
        {
            var language = Path.GetFileName(path);
            if (language == "schema") continue;
            if (TextFileLoader.Load(Path.Combine(path, "text.yml"), faults) is not { } file) continue;
            if (file.Language != language)
                faults.Add(file.FaultAt("language", null,
                    $"language is '{file.Language}', but the folder is '{language}'"));
            files.Add(file);
        }
        return files;
    }
}

/// <summary>The texts of a dialogs folder.</summary>
/// <param name="Book">Null when a file cannot be used at all.</param>
/// <param name="Files">The files that are YAML, faulty or not.</param>
/// <param name="Faults">Every fault that would put a wrong word before a farmer.</param>
public sealed record PhrasebookLoad(
    Phrasebook? Book, IReadOnlyList<TextFile> Files, IReadOnlyList<DialogFault> Faults);
