using System.CommandLine;
using HeapText.Agronomy;
using HeapText.Agronomy.Recipes;

namespace HeapText.Service.Verbs;

/// <summary>The verb <c>recipe</c>: what heap a stock makes, or what to bring.</summary>
internal static class RecipeVerb
{
    public static Command Create() =>
        JsonVerb.Command("recipe", "Reads a stock as JSON and writes the heap to build, or what to bring.", Run);

    internal static int Run(TextReader input, TextWriter output, TextWriter error) =>
        JsonVerb.Run<RecipeInput, RecipeOutput>(input, output, error, Answer);

    private static (RecipeOutput?, InputFault?) Answer(RecipeInput input)
    {
        if (input.Check() is { } missing)
        {
            return (null, missing);
        }

        var request = input.ToRequest();
        return request.Check() is { } fault ? (null, fault) : (RecipeOutput.From(RecipeSolver.Solve(request)), null);
    }
}
