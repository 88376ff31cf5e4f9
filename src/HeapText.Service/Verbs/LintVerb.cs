using System.CommandLine;
using HeapText.Dialog.Engine;

namespace HeapText.Service.Verbs;

/// <summary>Checks a dialogs folder: every fault with its place.</summary>
internal static class LintVerb
{
    public static Command Create()
    {
        var folder = new Argument<string?>("dir")
        {
            Description = "The dialogs folder; the one of this program when left out.",
            Arity = ArgumentArity.ZeroOrOne,
        };
        var lint = new Command("lint", "Checks the words in a dialogs folder; one line a fault.") { folder };
        lint.SetAction(parsed => Run(parsed.GetValue(folder) ?? DialogsFolder.Find(), Console.Out, Console.Error));
        return lint;
    }

    /// <summary>Prints each fault as file:line:column: message.</summary>
    /// <returns>0 when there is none, 1 when there is.</returns>
    internal static int Run(string? folder, TextWriter output, TextWriter errors)
    {
        if (folder is null || !Directory.Exists(folder))
        {
            errors.WriteLine($"dir: there is no folder '{folder}'; name a dialogs folder");
            return ExitCodes.BadInput;
        }
        try
        {
            var (_, faults) = DialogSet.Load(folder);
            foreach (var fault in faults) output.WriteLine(fault);
            errors.WriteLine(faults.Count == 0 ? "no faults" : $"{faults.Count} faults");
            return faults.Count == 0 ? ExitCodes.Done : ExitCodes.BadInput;
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            errors.WriteLine($"dir: {fault.Message} Each language is a folder with the files text.yml and words.yml.");
            return ExitCodes.BadInput;
        }
    }
}
