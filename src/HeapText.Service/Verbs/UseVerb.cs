using System.CommandLine;
using HeapText.Agronomy;
using HeapText.Agronomy.Use;

namespace HeapText.Service.Verbs;

/// <summary>The verb <c>use</c>: how much compost a crop is given, and what that brings and saves.</summary>
internal static class UseVerb
{
    public static Command Create() =>
        JsonVerb.Command("use", "Reads a crop and its ground as JSON and writes the compost it is given.", Run);

    internal static int Run(TextReader input, TextWriter output, TextWriter error) =>
        JsonVerb.Run<UseInput, UseOutput>(input, output, error, Answer);

    private static (UseOutput?, InputFault?) Answer(UseInput input)
    {
        var (request, unread) = input.ToRequest();
        return (unread ?? request?.Check()) is { } fault
            ? (null, fault)
            : (UseOutput.From(CompostUse.For(request!)), null);
    }
}
