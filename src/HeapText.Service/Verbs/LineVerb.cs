using System.CommandLine;
using System.Text.Json.Nodes;
using HeapText.Carriers;
using HeapText.Carriers.Mapped;
using HeapText.Dialog.Ports;
using HeapText.Service.Hooks;
using HeapText.Service.Startup;
using NodaTime.Extensions;

namespace HeapText.Service.Verbs;

/// <summary>line: the lines of the settings, and what one makes of a sample.</summary>
internal static class LineVerb
{
    private const string SampleNumber = "+256700000001";
    private const string SampleText = "Turn your heap today. Is it hot inside? 1 yes, 2 no";

    public static Command Create() => new("line", "Shows the lines of the settings and tries them on samples.")
    {
        CreateList(), CreateTry(),
    };

    private static Command CreateList() => With(
        new Command("list", "Lists the lines of the settings, without secrets."),
        (parsed, configuration, lines) =>
        {
            var document = new JsonObject
            {
                ["lines"] = new JsonArray([.. lines.Select(line => LineViews.Of(line, configuration))]),
            };
            TextLines.Write(parsed.InvocationConfiguration.Output, document);
            return ExitCodes.Done;
        });

    private static Command CreateTry()
    {
        var name = new Argument<string>("name") { Description = "The line." };
        var file = new Argument<FileInfo?>("file")
        {
            Arity = ArgumentArity.ZeroOrOne,
            Description = "A request as it goes over the wire; standard input when left out.",
        };
        var hook = new Option<string?>("--hook") { Description = "Reads a request that comes in at this hook." };
        hook.AcceptOnlyFromAmong([.. Enum.GetNames<HookKind>().Select(one => one.ToLowerInvariant())]);
        var send = new Option<bool>("--send") { Description = "Shows the request that would send a message." };
        var to = new Option<string>("--to") { DefaultValueFactory = _ => SampleNumber, Description = "Sent to whom." };
        var text = new Option<string>("--text") { DefaultValueFactory = _ => SampleText, Description = "The words." };
        var command = new Command("try", "Shows what a line makes of a sample request, or of a message to send.")
        {
            name, file, hook, send, to, text,
        };
        command.Validators.Add(parsed =>
        {
            if (parsed.GetValue(send) == parsed.GetValue(hook) is not null)
                parsed.AddError("Give either --hook or --send.");
        });
        return With(command, (parsed, _, lines) =>
        {
            var console = parsed.InvocationConfiguration;
            if (lines.FirstOrDefault(line => line.Name == parsed.GetValue(name)) is not { } line)
                return Refuse(console.Error, $"name: there is no such line; there are: {Names(lines)}");
            return parsed.GetValue(send)
                ? TrySend(line, parsed.GetValue(to)!, parsed.GetValue(text)!, console.Output, console.Error)
                : TryHook(line, Enum.Parse<HookKind>(parsed.GetValue(hook)!, ignoreCase: true),
                    Sample(parsed.GetValue(file)), console.Output, console.Error);
        });
    }

    private static Command With(Command command, Func<ParseResult, IConfiguration, IReadOnlyList<LineOptions>, int> run)
    {
        var settings = new Option<FileInfo?>("--settings") { Description = "Settings to read beside the usual ones." };
        command.Add(settings);
        command.TreatUnmatchedTokensAsErrors = false;
        command.SetAction(parsed =>
        {
            if (GivenSettings.Stray(parsed.UnmatchedTokens) is { } stray)
            {
                parsed.InvocationConfiguration.Error.WriteLine(
                    $"line {command.Name} does not know '{stray}'; see line {command.Name} --help.");
                return ExitCodes.WrongUse;
            }

            try
            {
                var configuration = Configuration(parsed.GetValue(settings), parsed.UnmatchedTokens);
                List<string> faults = [];
                var lines = LineSettingsReader.Read(configuration.GetSection("Lines"), faults);
                return faults.Count == 0
                    ? run(parsed, configuration, lines)
                    : Refuse(parsed.InvocationConfiguration.Error, string.Join(' ', faults));
            }
            catch (Exception fault) when (fault is InvalidDataException or IOException or UnauthorizedAccessException)
            {
                return Refuse(parsed.InvocationConfiguration.Error,
                    (fault.InnerException ?? fault).Message.ReplaceLineEndings(" "));
            }
        });
        return command;
    }

    private static IConfigurationRoot Configuration(FileInfo? file, IReadOnlyList<string> given)
    {
        var builder = ServeVerb.AddSettings(new ConfigurationBuilder());
        if (file is not null) builder.AddJsonFile(file.FullName, optional: false);
        return builder.AddCommandLine([.. given]).Build();
    }

    private static byte[] Sample(FileInfo? file)
    {
        if (file is not null) return File.ReadAllBytes(file.FullName);
        using var bytes = new MemoryStream();
        using var input = Console.OpenStandardInput();
        input.CopyTo(bytes);
        return bytes.ToArray();
    }

    /// <summary>Writes what a line reads from a request, and what it would answer.</summary>
    internal static int TryHook(LineOptions options, HookKind hook, byte[] sample, TextWriter output, TextWriter error)
    {
        if (InboundLine.Of(options) is not { } line || line.Form.Methods(hook).Count == 0)
            return Refuse(error,
                $"hook: the line {options.Name} has no such hook; map it in Lines:{options.Name}:{hook}");
        if (SampleRequest.Read(sample, out var fault) is not { } request) return Refuse(error, fault);
        TextLines.Write(output, LineViews.Of(line, hook, request, TimeProvider.System.GetUtcNow().ToInstant()));
        return ExitCodes.Done;
    }

    /// <summary>Writes the request that would send a message.</summary>
    internal static int TrySend(LineOptions options, string to, string text, TextWriter output, TextWriter error)
    {
        if (options is not MappedLineOptions line)
            return Refuse(error, $"name: {options.Name} is no mapped line, and the form of others is fixed");
        if (!Msisdn.TryParse(to, out var number))
            return Refuse(error, "to: it is no number in international form; write one like +256700000001");
        TextLines.Write(output, LineViews.Of(line, number, text, TimeProvider.System.GetUtcNow().ToInstant()));
        return ExitCodes.Done;
    }

    private static string Names(IReadOnlyList<LineOptions> lines) =>
        lines.Count == 0 ? "none" : string.Join(", ", lines.Select(line => line.Name));

    private static int Refuse(TextWriter error, string fault)
    {
        error.WriteLine(fault);
        return ExitCodes.BadInput;
    }
}
