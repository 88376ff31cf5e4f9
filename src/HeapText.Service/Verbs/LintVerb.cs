using System.CommandLine;
using HeapText.Dialog.Lint;

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
        var status = new Option<bool>("--status")
        {
            Description = "Says on standard error where each language stands, and what may be wrong.",
        };
        var lint = new Command("lint", "Checks the words in a dialogs folder; one line a fault.") { folder, status };
        lint.SetAction(parsed => Run(parsed.GetValue(folder) ?? DialogsFolder.Find(), parsed.GetValue(status),
            Console.Out, Console.Error));
        return lint;
    }

    /// <summary>Prints each fault as file:line:column: message; on the other writer, when asked for, where each
    /// language stands, and warnings.</summary>
    /// <returns>0 when there is none, 1 when there is.</returns>
    internal static int Run(string? folder, bool status, TextWriter output, TextWriter errors)
    {
        if (folder is null || !Directory.Exists(folder))
        {
            errors.WriteLine($"dir: there is no folder '{folder}'; name a dialogs folder");
            return ExitCodes.BadInput;
        }
        try
        {
            var lint = DialogLint.Check(folder);
            foreach (var fault in lint.Faults) output.WriteLine(fault);
            if (status)
            {
                foreach (var language in lint.Languages) errors.WriteLine(language);
                foreach (var warning in lint.Warnings) errors.WriteLine($"warning: {warning}");
            }
            errors.WriteLine(lint.Faults.Count == 0 ? "no faults" : $"{lint.Faults.Count} faults");
            return lint.Faults.Count == 0 ? ExitCodes.Done : ExitCodes.BadInput;
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            errors.WriteLine($"dir: {fault.Message} Each language is a folder with the files text.yml and words.yml.");
            return ExitCodes.BadInput;
        }
    }
}
