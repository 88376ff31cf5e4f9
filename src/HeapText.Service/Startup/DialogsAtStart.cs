using HeapText.Dialog.Engine;
using HeapText.Service.Verbs;

namespace HeapText.Service.Startup;

/// <summary>Reads the dialogs folder when the service starts.</summary>
internal static class DialogsAtStart
{
    /// <summary>The words to say and to understand; says which languages no native-speaking agronomist has
    /// read.</summary>
    /// <exception cref="SettingsFaultsException">The folder is missing or has faults, or a group's language is not in
    /// it; names each.</exception>
    public static DialogSet Load(Settings settings, TextWriter errors)
    {
        var dialogs = Load(settings.Dialogs);
        var languages = string.Join(", ", dialogs.Book.Languages);
        var faults = settings.Groups.Where(group => !dialogs.Book.Speaks(group.Language)).Select(group =>
            $"Groups:{group.Code}:Language: there are no dialogs in '{group.Language}'. Use one of {languages}.");
        faults = faults.Concat(settings.Languages.Where(language => !dialogs.Book.Speaks(language)).Select(language =>
            $"Languages: there are no dialogs in '{language}'. Use some of {languages}."));
        if (faults.ToList() is { Count: > 0 } unknown) throw new SettingsFaultsException(unknown);
        foreach (var language in dialogs.Book.Languages.Where(language => !dialogs.Book.File(language).Reviewed))
            errors.WriteLine($"The texts in '{language}' have not been read by a native-speaking agronomist. "
                + Consequence(language, settings));
        return dialogs;
    }

    /// <summary>Where an unreviewed language is spoken all the same, and how that is allowed.</summary>
    private static string Consequence(string language, Settings settings)
    {
        if (settings.IsPractice) return "Practice mode speaks it; a real line must be allowed to.";
        if (settings.Languages.Contains(language)) return "The setting Languages allows it.";
        var groups = settings.Groups.Where(group => group.Language == language).Select(group => group.Code).ToList();
        return groups.Count > 0
            ? $"It is spoken to the groups whose language it is ({string.Join(", ", groups)}), and to no others. "
                + $"To allow it to all, add it to the setting Languages, as in --Languages=\"{language}\"."
            : "It is not spoken, but to groups whose language it is. "
                + $"To allow it to all, add it to the setting Languages, as in --Languages=\"{language}\".";
    }

    /// <summary>The words in a folder, or in the one that comes with the program.</summary>
    /// <param name="setting">The Dialogs setting; null where it is not given.</param>
    /// <exception cref="SettingsFaultsException">The folder is missing or has faults; names each.</exception>
    public static DialogSet Load(string? setting)
    {
        if ((setting ?? DialogsFolder.Find()) is not { } folder)
            throw new SettingsFaultsException(["Dialogs: no dialogs folder was found. Name it in this setting."]);
        if (!Directory.Exists(folder))
            throw new SettingsFaultsException([$"Dialogs: there is no folder '{folder}'. Name one that is there."]);
        try
        {
            var (dialogs, faults) = DialogSet.Load(folder);
            return dialogs is not null && faults.Count == 0
                ? dialogs
                : throw new SettingsFaultsException([.. faults.Select(fault => $"{fault}")]);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            throw new SettingsFaultsException(
                [$"Dialogs: {fault.Message} Each language is a folder with the files text.yml and words.yml."], fault);
        }
    }
}
