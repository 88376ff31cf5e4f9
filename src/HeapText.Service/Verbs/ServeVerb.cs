using System.CommandLine;
using HeapText.Dialog.Ports;
using HeapText.Service.Startup;
using Microsoft.Extensions.Logging.Console;

namespace HeapText.Service.Verbs;

/// <summary>serve: runs the service until it is told to stop.</summary>
internal static class ServeVerb
{
    /// <summary>The command.</summary>
    public static Command Create()
    {
        var urls = new Option<string?>("--urls") { Description = "Addresses to listen on, parted by ';'." };
        var data = new Option<string?>("--data") { Description = "Folder of the embedded store (./data)." };
        var fresh = new Option<bool>("--fresh") { Description = "Practice mode: empty store, no demo farmers." };
        var serve = new Command("serve", "Runs the service; practice mode where no line is configured. "
            + "Any setting may be given as --Key=value or --Section:Key=value.")
        {
            urls, data, fresh,
        };
        serve.TreatUnmatchedTokensAsErrors = false;
        serve.SetAction(async (parsed, cancel) =>
        {
            if (GivenSettings.Stray(parsed.UnmatchedTokens) is { } stray)
            {
                await Console.Error.WriteLineAsync($"serve does not know '{stray}'; see serve --help.");
                return ExitCodes.WrongUse;
            }

            string[] settings = [.. parsed.UnmatchedTokens,
                .. Given("Urls", parsed.GetValue(urls)), .. Given("Store:DataDirectory", parsed.GetValue(data))];
            return await Run(settings, parsed.GetValue(fresh), Console.Out, Console.Error, cancel);
        });
        return serve;
    }

    /// <summary>Runs the service.</summary>
    /// <param name="args">Settings, each as --Key=value.</param>
    /// <param name="fresh">Start with an empty store.</param>
    /// <param name="output">Where the addresses are printed.</param>
    /// <param name="errors">Where it is said why it does not start.</param>
    /// <param name="cancel">Stops it.</param>
    public static async Task<int> Run(
        string[] args, bool fresh, TextWriter output, TextWriter errors, CancellationToken cancel)
    {
        try
        {
            var builder = NewBuilder(args);
            var settings = SettingsReader.Read(builder.Configuration, fresh);
            var dialogs = DialogsAtStart.Load(settings, errors);
            AddressCheck.RefuseTaken(settings.Urls);
            using var folder = settings.KeepsFiles ? DataFolder.Take(settings.Store.DataDirectory) : null;
            using var logging = LoggerFactory.Create(LogToStandardError);
            var parts = await RecordsAtStart.Open(
                settings, dialogs, folder, logging.CreateLogger<IStore>(), errors, cancel);
            await using var app = ServiceHost.Build(builder, settings, parts);
            await RecordsAtStart.Fill(app, settings, cancel);
            await AddressCheck.Start(app, cancel);
            await PrintAddresses(app, settings, output);
            await app.WaitForShutdownAsync(cancel);
            return ExitCodes.Done;
        }
        catch (Exception fault) when (fault is SettingsFaultsException or InvalidDataException or IOException
            or UnauthorizedAccessException)
        {
            await errors.WriteLineAsync(fault.Message);
            return ExitCodes.BadInput;
        }
    }

    private static WebApplicationBuilder NewBuilder(string[] args)
    {
        var builder = WebApplication.CreateBuilder(new WebApplicationOptions
        {
            ContentRootPath = AppContext.BaseDirectory,
        });
        builder.Configuration.Sources.Clear();
        AddSettings(builder.Configuration).AddCommandLine(args);
        LogToStandardError(builder.Logging);
        return builder;
    }

    /// <summary>Adds where settings stand beside the command line.</summary>
    internal static IConfigurationBuilder AddSettings(IConfigurationBuilder configuration) => configuration
        .SetBasePath(AppContext.BaseDirectory)
        .AddJsonFile("appsettings.json", optional: true)
        .AddEnvironmentVariables("HEAPTEXT__");

    // Standard output is for what a program reads.
    private static void LogToStandardError(ILoggingBuilder logging)
    {
        logging.ClearProviders();
        logging.AddSimpleConsole(console =>
        {
            console.SingleLine = true;
            console.UseUtcTimestamp = true;
            console.TimestampFormat = "yyyy-MM-ddTHH:mm:ss.fffZ ";
        });
        logging.Services.Configure<ConsoleLoggerOptions>(
            console => console.LogToStandardErrorThreshold = LogLevel.Trace);
    }

    private static async Task PrintAddresses(WebApplication app, Settings settings, TextWriter output)
    {
        foreach (var url in app.Urls)
        {
            await output.WriteLineAsync(settings.IsPractice
                ? $"HeapText practice mode: {url} (a phone in the browser: {url}/phone)"
                : $"HeapText: {url}");
        }

        await output.FlushAsync();
    }

    private static IEnumerable<string> Given(string key, string? value) => value is null ? [] : [$"--{key}={value}"];
}
