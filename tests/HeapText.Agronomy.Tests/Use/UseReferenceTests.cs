using HeapText.Agronomy.Quantities;
using HeapText.Agronomy.Tests.Reference;
using HeapText.Agronomy.Use;

namespace HeapText.Agronomy.Tests.Use;

public sealed class UseReferenceTests
{
    private const double Bag = 50;

    [Fact]
    public void Figures_OfPublications_AgreeWithTheUse()
    {
        foreach (var row in ReferenceRows.Of("use.csv"))
        {
            var figure = Figure(row[1], row[2].Split(' '));

            var miss = Math.Abs(figure - ReferenceRows.Number(row[3]));
            Assert.True(miss <= ReferenceRows.Number(row[4]), $"{row[0]} {row[1]} {figure}");
        }
    }

    private static double Figure(string figure, string[] inputs) => figure switch
    {
        "nitrogenKg" => OfCompost(inputs).Nitrogen.Kilograms,
        "firstYearKg" => OfCompost(inputs).NitrogenFirstYear.Kilograms,
        "firstYearUreaKg" => OfCompost(inputs).Equivalents.Single(one => one.Fertiliser.Key == "urea").Amount.Kilograms,
        "ureaKg" => Of("urea").CarryingNitrogen(Mass.FromKilograms(Number(inputs[0]))).Kilograms,
        "nitrogenInBagKg" => Of(inputs[0]).Nitrogen.Value * Bag,
        "phosphorusInBagKg" => Of(inputs[0]).Phosphorus.Value * Bag,
        "potassiumInBagKg" => Of(inputs[0]).Potassium.Value * Bag,
        "kgForM2" => OnGround(inputs).Needed.Kilograms,
        "lowKgForM2" => OnGround(inputs).NeededLow.Kilograms,
        "highKgForM2" => OnGround(inputs).NeededHigh.Kilograms,
        "kgForPlants" => ToPlants(inputs).Needed.Kilograms,
        "lowKgForPlants" => ToPlants(inputs).NeededLow.Kilograms,
        "highKgForPlants" => ToPlants(inputs).NeededHigh.Kilograms,
        "litresAPlant" => ToPlants(inputs).Needed.Kilograms / ReadyCompost.KgPerLitre,
        "lowLitresAPlant" => ToPlants(inputs).NeededLow.Kilograms / ReadyCompost.KgPerLitre,
        _ => throw new ArgumentOutOfRangeException(nameof(figure), figure, "No such figure."),
    };

    private static UseResult OfCompost(string[] inputs) => CompostUse.For(new UseRequest
    {
        Crop = "maize",
        AreaM2 = 1,
        CompostKg = Number(inputs[0]),
        MoisturePercent = Number(inputs[1]),
        NitrogenPercent = Number(inputs[2]),
    });

    private static UseResult OnGround(string[] inputs) =>
        CompostUse.For(new UseRequest { Crop = inputs[0], AreaM2 = Number(inputs[1]) });

    private static UseResult ToPlants(string[] inputs) =>
        CompostUse.For(new UseRequest { Crop = inputs[0], Plants = Number(inputs[1]) });

    private static Fertiliser Of(string key) => FertiliserTable.All.Single(one => one.Key == key);

    private static double Number(string cell) => ReferenceRows.Number(cell);
}
