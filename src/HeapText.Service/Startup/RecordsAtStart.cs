using HeapText.Dialog.Engine;
using HeapText.Dialog.Ports;
using HeapText.Service.Practice;
using HeapText.Service.Turns;
using HeapText.Store;
using Microsoft.Data.Sqlite;

namespace HeapText.Service.Startup;

/// <summary>Opens the records when the service starts: empties them where that is asked and nothing speaks against
/// it, and puts in what a start puts in.</summary>
internal static class RecordsAtStart
{
    /// <summary>Opens the store, and in practice mode the journal.</summary>
    /// <param name="settings">Where they are.</param>
    /// <param name="dialogs">The words for the conversation.</param>
    /// <param name="folder">The data folder; null when nothing is kept in it.</param>
    /// <param name="log">Told of faults of the store.</param>
    /// <param name="errors">Told when a demo village stays half made.</param>
    /// <param name="cancel">Ends it early.</param>
    /// <exception cref="SettingsFaultsException">They cannot be used; names the setting.</exception>
    public static async Task<Parts> Open(
        Settings settings, DialogSet dialogs, DataFolder? folder, ILogger log, TextWriter errors,
        CancellationToken cancel)
    {
        if (settings.Fresh) await Empty(settings.Store, folder!, log, cancel);
        var practice = settings.IsPractice ? await OpenPractice(settings.Store, folder!, errors) : null;
        var store = await OpenStore(settings.Store, log, practice?.Clock ?? TimeProvider.System);
        var groups = new GroupBook(store);
        await Reach(settings.Store, () => groups.Load(cancel));
        var words = new WordBook(dialogs.Reader);
        await Reach(settings.Store, async () => words.Set(await store.OwnWords(cancel)));
        var conversation = new Conversation(dialogs, groups.ByCode, settings.Office(), words);
        return new Parts(store, conversation, TimeProvider.System, practice)
        {
            Groups = groups,
            Words = words,
            Book = dialogs.Book,
        };
    }

    /// <summary>Puts the demo village into an empty practice store, and then the groups of the settings.</summary>
    /// <exception cref="SettingsFaultsException">The store cannot take them; names the setting.</exception>
    public static Task Fill(WebApplication app, Settings settings, CancellationToken cancel) =>
        Reach(settings.Store, async () =>
        {
            if (settings.IsPractice)
                await app.Services.GetRequiredService<DemoVillage>().Seed(!settings.Fresh, cancel);
            var groups = app.Services.GetRequiredService<GroupBook>();
            foreach (var group in settings.Groups) await groups.Put(group, cancel);
        });

    private static async Task Empty(StoreOptions options, DataFolder folder, ILogger log, CancellationToken cancel)
    {
        if (options.IsEmbedded())
        {
            if (folder.HoldsRealRecords(options.Secret.Length > 0))
                throw new SettingsFaultsException(["--fresh: the store in the data folder was not made by practice "
                    + "mode, and is left alone. Name another folder with --data."]);
            folder.WipeAll();
            return;
        }

        await using var store = await OpenStore(options, log, TimeProvider.System);
        await Reach(options, async () =>
        {
            if (!await store.IsEmpty(cancel))
                throw new SettingsFaultsException(
                    ["--fresh: the store server holds records. Empty it, or leave --fresh out."]);
        });
        folder.WipeJournal();
    }

    private static async Task<PracticeParts> OpenPractice(StoreOptions options, DataFolder folder, TextWriter errors)
    {
        try
        {
            var practice = await PracticeParts.Open(options.DataDirectory, TimeProvider.System);
            if (!await practice.Journal.IsSeeding()) return practice;
            if (!options.IsEmbedded())
            {
                await errors.WriteLineAsync("The demo village was left half made when the service was stopped, and the "
                    + "store server keeps it so. Empty the server and start again to have it whole.");
                await practice.Journal.KeepSeeding(false);
                return practice;
            }

            await practice.Journal.DisposeAsync();
            folder.WipeAll();
            return await PracticeParts.Open(options.DataDirectory, TimeProvider.System);
        }
        catch (SqliteException fault)
        {
            throw new SettingsFaultsException(
                [$"Store:DataDirectory: {PracticeJournal.FileName} in {options.DataDirectory} cannot be used "
                    + $"({fault.Message.TrimEnd('.')}). Delete it, or name another folder with --data."], fault);
        }
    }

    /// <summary>Opens a store that a service may be using.</summary>
    /// <exception cref="SettingsFaultsException">It cannot be used; names the setting.</exception>
    public static Task<IStore> OpenBeside(StoreOptions options) =>
        OpenStore(options, () => StoreFactory.OpenBeside(options));

    private static Task<IStore> OpenStore(StoreOptions options, ILogger log, TimeProvider time) =>
        OpenStore(options, () => StoreFactory.Open(options, log, time));

    private static Task<IStore> OpenStore(StoreOptions options, Func<ValueTask<IStore>> open) =>
        OnStore(options, () => open().AsTask());

    /// <summary>Opens the store, or works on it as a whole.</summary>
    /// <exception cref="SettingsFaultsException">It cannot be used; names the setting.</exception>
    public static async Task<T> OnStore<T>(StoreOptions options, Func<Task<T>> work)
    {
        try
        {
            return await work();
        }
        catch (ArgumentException fault)
        {
            // The message without the name of our own argument.
            var words = fault.Message.Replace($" (Parameter '{fault.ParamName}')", "", StringComparison.Ordinal);
            throw words.StartsWith("Store:", StringComparison.Ordinal)
                ? new SettingsFaultsException([words], fault)
                : Unreachable(options, words, fault);
        }
        catch (InvalidOperationException fault)
        {
            throw new SettingsFaultsException([$"Store:Connection: {fault.Message}"], fault);
        }
        catch (Exception fault)
            when (fault is StoreUnavailableException or IOException or UnauthorizedAccessException)
        {
            throw Unreachable(options, fault.Message, fault);
        }
    }

    private static async Task Reach(StoreOptions options, Func<Task> step)
    {
        try
        {
            await step();
        }
        catch (StoreUnavailableException fault)
        {
            throw Unreachable(options, fault.Message, fault);
        }
    }

    private static SettingsFaultsException Unreachable(StoreOptions options, string words, Exception fault) => new(
        [options.IsEmbedded()
            ? $"Store:DataDirectory: {Sentence(words)} {Sentence(fault.InnerException?.Message)} "
                + "Name another folder with --data, or put a backup in its place."
            : $"Store:Connection: {Sentence(words)} Check that the server runs, and the connection string."],
        fault);

    private static string Sentence(string? words) =>
        string.IsNullOrWhiteSpace(words) ? "" : words.ReplaceLineEndings(" ").TrimEnd('.') + ".";

    private static bool IsEmbedded(this StoreOptions options) => options.Connection.Length == 0;
}
