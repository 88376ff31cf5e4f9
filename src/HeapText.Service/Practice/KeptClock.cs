using HeapText.Service.Startup;
using Microsoft.Data.Sqlite;
using NodaTime;
using NodaTime.Extensions;

namespace HeapText.Service.Practice;

/// <summary>The practice clock as the journal in a data folder keeps it, for verbs beside the service.</summary>
internal static class KeptClock
{
    /// <summary>The clock of the practice service of this folder; the real one where there was none.</summary>
    /// <exception cref="SettingsFaultsException">The journal cannot be read.</exception>
    public static async Task<TimeProvider> Of(string folder, TimeProvider real)
    {
        if (!File.Exists(Path.Combine(folder, PracticeJournal.FileName))) return real;
        return await With(folder, async journal => new PracticeClock(real, await journal.Offset()));
    }

    /// <summary>Lets the next service go on from a backup: its clock has reached the moment of the backup, and a demo
    /// village once left half made is no more to be made anew.</summary>
    /// <exception cref="SettingsFaultsException">The journal cannot be written.</exception>
    public static async Task GoOnFrom(Instant moment, string folder, TimeProvider real)
    {
        var offset = moment - real.GetUtcNow().ToInstant();
        // No journal is made for a store that no practice service has moved the clock of.
        if (offset <= Duration.Zero && !File.Exists(Path.Combine(folder, PracticeJournal.FileName))) return;
        await With(folder, async journal =>
        {
            await journal.KeepSeeding(false);
            if (offset > await journal.Offset()) await journal.KeepOffset(offset);
            return true;
        });
    }

    private static async Task<T> With<T>(string folder, Func<PracticeJournal, Task<T>> use)
    {
        try
        {
            await using var journal = PracticeJournal.Open(folder);
            return await use(journal);
        }
        catch (SqliteException fault)
        {
            throw new SettingsFaultsException(
                [$"Store:DataDirectory: {PracticeJournal.FileName} in {folder} cannot be used "
                    + $"({fault.Message.TrimEnd('.')}). Delete it, or name another folder with --data."], fault);
        }
    }
}
