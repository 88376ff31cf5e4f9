using System.CommandLine;
using System.Diagnostics;
using HeapText.Agronomy;
using HeapText.Agronomy.Mixing;

namespace HeapText.Service.Verbs;

/// <summary>The verb <c>mix</c>: carbon, nitrogen, moisture and water to add of given parts.</summary>
internal static class MixVerb
{
    public static Command Create() =>
        JsonVerb.Command("mix", "Reads the parts of a mix as JSON and writes its C/N, moisture and water to add.", Run);

    internal static int Run(TextReader input, TextWriter output, TextWriter error) =>
        JsonVerb.Run<MixInput, MixOutput>(input, output, error, Answer);

    private static (MixOutput?, InputFault?) Answer(MixInput input)
    {
        if (input.Check() is { } fault)
        {
            return (null, fault);
        }

        return MixSolver.Solve(input.ToProblem()) switch
        {
            MixResult.Solved(var mix) => (MixOutput.From(mix), null),
            MixResult.Faulty(var reason) => (null, reason),
            _ => throw new UnreachableException(),
        };
    }
}
