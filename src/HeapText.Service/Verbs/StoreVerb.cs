using System.CommandLine;
using HeapText.Dialog.Ports;
using HeapText.Service.Startup;
using HeapText.Store.Backup;

namespace HeapText.Service.Verbs;

/// <summary>What the verbs that work on the configured store have in common, while the service runs or not.</summary>
internal static class StoreVerb
{
    /// <summary>Gives a command --data and every setting as --Key=value, and turns what is wrong with them or the store
    /// into one line.</summary>
    public static Command With(Command command, Func<ParseResult, Settings, Task<int>> run)
    {
        var data = new Option<string?>("--data") { Description = "Folder of the embedded store (./data)." };
        command.Add(data);
        command.TreatUnmatchedTokensAsErrors = false;
        command.SetAction(async (parsed, _) =>
        {
            var errors = parsed.InvocationConfiguration.Error;
            if (GivenSettings.Stray(parsed.UnmatchedTokens) is { } stray)
            {
                await errors.WriteLineAsync($"{command.Name} does not know '{stray}'; see {command.Name} --help.");
                return ExitCodes.WrongUse;
            }
            try
            {
                return await run(parsed, ReadSettings(parsed.UnmatchedTokens, parsed.GetValue(data)));
            }
            catch (Exception fault) when (fault is SettingsFaultsException or InvalidDataException
                or StoreUnavailableException or BackupFaultException)
            {
                await errors.WriteLineAsync(fault.Message.ReplaceLineEndings(" "));
                return ExitCodes.BadInput;
            }
        });
        return command;
    }

    private static Settings ReadSettings(IReadOnlyList<string> given, string? data)
    {
        string[] folder = data is null ? [] : [$"--Store:DataDirectory={data}"];
        var configuration = ServeVerb.AddSettings(new ConfigurationBuilder()).AddCommandLine([.. given, .. folder]);
        return SettingsReader.Read(configuration.Build(), fresh: false);
    }
}
