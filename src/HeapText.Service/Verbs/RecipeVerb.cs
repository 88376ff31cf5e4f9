using System.CommandLine;
using HeapText.Agronomy;
using HeapText.Agronomy.Recipes;
using HeapText.Agronomy.Recipes.Village;

namespace HeapText.Service.Verbs;

/// <summary>
/// The verb <c>recipe</c>: what heap a stock makes, or what to bring; for a village, what neighbours should give each
/// other.
/// </summary>
internal static class RecipeVerb
{
    public static Command Create() => JsonVerb.Command(
        "recipe", "Reads a stock, or a village's, as JSON and writes the heap to build, or what to bring.", Run);

    internal static int Run(TextReader input, TextWriter output, TextWriter error) =>
        JsonVerb.Run<RecipeInput, object>(input, output, error, Answer);

    private static (object?, InputFault?) Answer(RecipeInput input)
    {
        if (input.Check() is { } missing)
        {
            return (null, missing);
        }

        if (input.Village is not null)
        {
            var village = input.ToVillage();
            return village.Check() is { } wrong
                ? (null, wrong)
                : (RecipeVillageOutput.From(VillageBalance.Solve(village)), null);
        }

        var request = input.ToRequest();
        return request.Check() is { } fault ? (null, fault) : (RecipeOutput.From(RecipeSolver.Solve(request)), null);
    }
}
