using CsCheck;
using HeapText.Agronomy.Use;

namespace HeapText.Agronomy.Tests.Use;

public sealed class CompostUseProperties
{
    private static readonly Gen<string> Fertilisers =
        Gen.Int[0, FertiliserTable.All.Count - 1].Select(i => FertiliserTable.All[i].Key);

    private static readonly Gen<UseRequest> Requests =
        from crop in Gen.Int[0, CropTable.All.Count - 1].Select(i => CropTable.All[i].Key)
        from byArea in Gen.Bool
        from area in Gen.Double[0.1, 1e5]
        from plants in Gen.Int[1, 100_000]
        from compost in Gen.Double[0, 1e5].Nullable()
        from moisture in Gen.Double[0, 100].Nullable()
        from nitrogen in Gen.Double[0, 3].Nullable()
        from prices in Gen.Dictionary(Fertilisers, Gen.Double[0.01, 1e4])[0, 4]
        select new UseRequest
        {
            Crop = crop,
            AreaM2 = byArea ? area : null,
            Plants = byArea ? null : plants,
            CompostKg = compost,
            MoisturePercent = moisture,
            NitrogenPercent = nitrogen,
            Prices = prices,
        };

    [Fact]
    public void Needed_OfMoreGroundOrPlants_GrowsInProportion() =>
        Gen.Select(Requests, Gen.Int[2, 9]).Sample((request, times) =>
        {
            var more = request with { AreaM2 = request.AreaM2 * times, Plants = request.Plants * times };

            Close(CompostUse.For(request).Needed.Kilograms * times, CompostUse.For(more).Needed.Kilograms);
        });

    [Fact]
    public void Nitrogen_OfEveryEquivalent_IsThatOfTheFirstYear() => Requests.Sample(request =>
    {
        var result = CompostUse.For(request);

        Assert.All(result.Equivalents, one => Close(
            result.NitrogenFirstYear.Kilograms, one.Amount.Kilograms * one.Fertiliser.Nitrogen.Value));
    });

    [Fact]
    public void Nitrogen_OfWetterCompost_IsNeverMore() =>
        Gen.Select(Requests, Gen.Double[0, 100], Gen.Double[0, 100]).Sample((request, one, other) =>
        {
            var drier = CompostUse.For(request with { MoisturePercent = Math.Min(one, other) });
            var wetter = CompostUse.For(request with { MoisturePercent = Math.Max(one, other) });

            Assert.True(wetter.Nitrogen <= drier.Nitrogen);
        });

    [Fact]
    public void Value_AtAnyPrices_IsNeverAboveTheFirstYearsNitrogenAtTheBestPrice() => Requests.Sample(request =>
    {
        var result = CompostUse.For(request);

        var prices = result.Equivalents.Where(one => request.Prices.ContainsKey(one.Fertiliser.Key))
            .Select(one => one.Amount.Kilograms * request.Prices[one.Fertiliser.Key]).ToList();
        Assert.Equal(prices.Count == 0, result.Value is null);
        if (result.Value is { } value) Close(prices.Min(), value);
    });

    [Fact]
    public void Covers_OfCompost_NeverTakesMoreThanThereIs() => Requests.Sample(request =>
    {
        var result = CompostUse.For(request);

        var compost = request.CompostKg ?? result.Needed.Kilograms;
        Close(compost, result.CoversM2 * result.Crop.PerM2.Typical);
        Close(compost, result.CoversPlants * result.Crop.PerPlant.Typical);
    });

    private static void Close(double expected, double actual) =>
        Assert.True(Math.Abs(expected - actual) <= 1e-9 * Math.Max(1, Math.Abs(expected)), $"{expected} {actual}");
}
