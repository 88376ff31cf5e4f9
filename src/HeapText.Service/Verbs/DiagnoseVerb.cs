using System.CommandLine;
using HeapText.Agronomy;
using HeapText.Agronomy.Heap;

namespace HeapText.Service.Verbs;

/// <summary>The verb <c>diagnose</c>: what ails a heap, by its checks, and what to do.</summary>
internal static class DiagnoseVerb
{
    public static Command Create() =>
        JsonVerb.Command("diagnose", "Reads the check of a heap as JSON and writes what it finds and asks for.", Run);

    internal static int Run(TextReader input, TextWriter output, TextWriter error) =>
        JsonVerb.Run<DiagnoseInput, DiagnoseOutput>(input, output, error, Answer);

    private static (DiagnoseOutput?, InputFault?) Answer(DiagnoseInput input) => input.Check() is { } fault
        ? (null, fault)
        : (DiagnoseOutput.From(Diagnosis.Of(input.ToHeap())), null);
}
