using System.CommandLine;
using System.Globalization;
using System.Text.Json.Nodes;
using HeapText.Service.Practice;
using HeapText.Service.Startup;
using HeapText.Store.Backup;
using NodaTime.Text;

namespace HeapText.Service.Verbs;

/// <summary>backup and restore: the whole state of the configured store, out and in.</summary>
internal static class BackupVerb
{
    /// <summary>backup: beside the running service, or without it.</summary>
    public static Command CreateBackup()
    {
        var file = new Argument<string>("file") { Description = "Where to; there once it is whole." };
        var backup = new Command("backup", "Writes the whole state of the store into a file, while the service runs.")
        {
            file,
        };
        return StoreVerb.With(backup, (parsed, settings) =>
            Backup(settings, parsed.GetValue(file)!, parsed.InvocationConfiguration));
    }

    /// <summary>restore: only while no service runs.</summary>
    public static Command CreateRestore()
    {
        var file = new Argument<string>("file") { Description = "A backup." };
        var replace = new Option<bool>("--replace") { Description = "Lose what the store holds now." };
        var restore = new Command("restore", "Puts a backup into the store, which must be empty; no service may run.")
        {
            file, replace,
        };
        return StoreVerb.With(restore, (parsed, settings) => Restore(
            settings, parsed.GetValue(file)!, parsed.GetValue(replace), parsed.InvocationConfiguration));
    }

    private static async Task<int> Backup(Settings settings, string file, InvocationConfiguration console)
    {
        var time = settings.IsPractice
            ? await KeptClock.Of(settings.Store.DataDirectory, TimeProvider.System)
            : TimeProvider.System;
        var taken = await RecordsAtStart.OnStore(settings.Store, () => StoreBackup.Take(
            settings.Store, file, time, farmers => Progress(console, farmers), CancellationToken.None));
        TextLines.Write(console.Output, Document(file, taken));
        return ExitCodes.Done;
    }

    private static async Task<int> Restore(
        Settings settings, string file, bool replace, InvocationConfiguration console)
    {
        using var folder = settings.KeepsFiles ? DataFolder.Take(settings.Store.DataDirectory) : null;
        var restored = await RecordsAtStart.OnStore(settings.Store, () => StoreBackup.Restore(
            settings.Store, file, replace, TimeProvider.System, farmers => Progress(console, farmers),
            CancellationToken.None));
        if (settings.IsPractice)
            await KeptClock.GoOnFrom(restored.TakenAt, settings.Store.DataDirectory, TimeProvider.System);
        TextLines.Write(console.Output, Document(file, restored));
        return ExitCodes.Done;
    }

    private static void Progress(InvocationConfiguration console, long farmers) =>
        console.Error.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{farmers} farmers"));

    private static JsonObject Document(string file, BackupSummary summary) => new()
    {
        ["file"] = Path.GetFullPath(file),
        ["bytes"] = summary.Bytes,
        ["takenAt"] = InstantPattern.General.Format(summary.TakenAt),
        ["secretFingerprint"] = summary.Secret,
        ["counts"] = new JsonObject(summary.Counts.Select(count =>
            KeyValuePair.Create<string, JsonNode?>(count.Key, count.Value))),
    };
}
