using System.CommandLine;
using HeapText.Service.Verbs;

var heaptext = new RootCommand("Guides farmers through making compost, by SMS and USSD.")
{
    PhoneVerb.Create(),
    ServeVerb.Create(),
    MixVerb.Create(),
    RecipeVerb.Create(),
    UseVerb.Create(),
    DiagnoseVerb.Create(),
    ForecastVerb.Create(),
    ReadVerb.Create(),
    FitVerb.Create(),
    LintVerb.Create(),
    WordVerb.Create(),
    BackupVerb.CreateBackup(),
    BackupVerb.CreateRestore(),
    MessageVerb.Create(),
    LineVerb.Create(),
};

// No verb means serve, with or without options of its own.
string[] help = ["--help", "-h", "-?", "--version"];
if (args is [] || (args[0].StartsWith("--", StringComparison.Ordinal) && !help.Contains(args[0])))
    args = ["serve", .. args];

// A text may start with "@", which would otherwise name a file of arguments.
var texts = new ParserConfiguration { ResponseFileTokenReplacer = null };
var parsed = heaptext.Parse(args, texts);
if (parsed.Errors.Count > 0)
{
    foreach (var error in parsed.Errors) await Console.Error.WriteLineAsync(error.Message);
    return ExitCodes.WrongUse;
}

// The host itself answers to being told to stop; a second deadline beside its own would cut it short.
return await parsed.InvokeAsync(new InvocationConfiguration { ProcessTerminationTimeout = null });
