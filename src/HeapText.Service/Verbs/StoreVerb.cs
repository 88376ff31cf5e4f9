using System.CommandLine;
using HeapText.Dialog.Ports;
using HeapText.Service.Startup;

namespace HeapText.Service.Verbs;

/// <summary>What the verbs that work on the configured store have in common, while the service runs or not.</summary>
internal static class StoreVerb
{
    /// <summary>Lets a command take the settings that name the store, and say in one line what is wrong with
    /// them.</summary>
    public static Command With(Command command, Func<ParseResult, Settings, Task<int>> run)
    {
        var data = new Option<string?>("--data") { Description = "Folder of the embedded store (./data)." };
        command.Add(data);
        command.TreatUnmatchedTokensAsErrors = false;
        command.SetAction(async (parsed, _) =>
        {
            try
            {
                return await run(parsed, ReadSettings(parsed.UnmatchedTokens, parsed.GetValue(data)));
            }
            catch (Exception fault) when (fault is SettingsFaultsException or InvalidDataException
                or StoreUnavailableException)
            {
                await parsed.InvocationConfiguration.Error.WriteLineAsync(fault.Message.ReplaceLineEndings(" "));
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
