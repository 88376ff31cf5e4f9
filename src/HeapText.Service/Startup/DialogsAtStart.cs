using HeapText.Dialog.Engine;
using HeapText.Service.Verbs;

namespace HeapText.Service.Startup;

/// <summary>Reads the dialogs folder when the service starts.</summary>
internal static class DialogsAtStart
{
    /// <summary>The words to say and to understand; says which languages no native-speaking agronomist has
    /// read.</summary>
    /// <exception cref="SettingsFaultsException">The folder is missing or has faults; names each.</exception>
    public static DialogSet Load(Settings settings, TextWriter errors)
    {
        if ((settings.Dialogs ?? DialogsFolder.Find()) is not { } folder)
            throw new SettingsFaultsException(["Dialogs: no dialogs folder was found. Name it in this setting."]);
        var (dialogs, faults) = DialogSet.Load(folder);
        if (dialogs is null || faults.Count > 0)
            throw new SettingsFaultsException([.. faults.Select(fault => $"{fault}")]);
        foreach (var language in dialogs.Book.Languages.Where(language => !dialogs.Book.File(language).Reviewed))
            errors.WriteLine($"The texts in '{language}' have not been read by a native-speaking agronomist.");
        return dialogs;
    }
}
