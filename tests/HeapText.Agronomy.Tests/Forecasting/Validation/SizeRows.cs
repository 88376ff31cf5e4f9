using HeapText.Agronomy.Forecasting;

namespace HeapText.Agronomy.Tests.Forecasting.Validation;

/// <summary>Rows about size, packing and wetness.</summary>
internal static class SizeRows
{
    internal static IEnumerable<ValidationRow> All => [Sizes(), Outdoor(), Packing(), Hyacinth()];

    private static Share[] GardenMix => [new("vegetable-waste", 5), new("fresh-grass", 20), new("dry-leaves", 75)];

    private static ValidationRow Sizes()
    {
        var heap = TrialHeap.Of(4, 60, GardenMix) with { AmbientC = 20, Days = 30 };
        var large = HeapForecast.Run(heap);
        var bin = HeapForecast.Run(TrialHeap.Of(0.1, 60, GardenMix) with { AmbientC = 20, Days = 30 });
        return new ValidationRow
        {
            Key = "sizes",
            Study = "Cornell Waste Management Institute, systems by size",
            Reported = "Large systems 60-70 °C in 3-5 days; bins over 10 gallons 40-50 °C in 2-3 days; "
                + "bottles 30-40 °C.",
            Assumed = "Vegetable waste 5, fresh grass 20, dry leaves 75 by volume (C/N 38, moisture 61 %); 4 "
                + "m3 and 0.1 m3; air 20 °C; not turned. A bottle is no heap: not represented.",
            IsFitted = true,
            Series = [Validation.Series.CoreOf("4 m3", large), Validation.Series.CoreOf("0.1 m3", bin)],
            Boxes = [new(3, 5, 60, 70, "large"), new(2, 3, 40, 50, "bin")],
            Claims =
            [
                new("large, hottest of days 3-5, °C", 60, 70, Prediction.Hottest(large, 3, 5), Verdict.Hit),
                new("bin, hottest of days 2-3, °C", 40, 50, Prediction.Hottest(bin, 2, 3), Verdict.Miss),
            ],
            Discussion = "The large system is fitted, so no proof. The bin misses wholly: the model gives 100 L "
                + "almost nothing to keep its heat with. Bins have walls that insulate and hold in "
                + "vapour, which a bare heap has not. Do not use the forecast below half a cubic metre.",
        };
    }

    private static ValidationRow Outdoor()
    {
        var heap = HeapForecast.Run(TrialHeap.Of(1, 60, GardenMix) with { AmbientC = 20, Days = 30 });
        return new ValidationRow
        {
            Key = "outdoor",
            Study = "Cornell, outdoor composting",
            Reported = "32-60 °C within 4-5 days.",
            Assumed = "The garden mix above; 1 m3; air 20 °C; not turned.",
            Series = [Validation.Series.CoreOf("1 m3", heap)],
            Boxes = [new(4, 5, 32, 60, "reported")],
            Claims =
            [
                new("hottest of days 4-5, °C", 32, 60, Prediction.Hottest(heap, 4, 5), Verdict.Hit),
            ],
            Discussion = "The reported range is wide; a hit here says little.",
        };
    }

    private static ValidationRow Packing()
    {
        var straw = new Share("wheat-straw", 80) { DensityKgPerM3 = 60 };
        var litter = TrialHeap.Of(4, 65, new("cow-dung", 20), straw) with { AmbientC = 10, Days = 60 };
        var loose = HeapForecast.Run(litter);
        var pressed = HeapForecast.Run(litter.PressedTo(0.5));
        return new ValidationRow
        {
            Key = "packing",
            Study = "Sommer & Dahl 1999, cattle deep litter",
            Reported = "Compacted heap to 50-60 °C, mixed (loosened) heap 30-40 °C.",
            Assumed = "Dung 20 and loose straw 80 by volume, at least 65 % moisture; 4 m3 loose, 2 m3 "
                + "compacted; air 10 °C; not turned.",
            Series = [Validation.Series.CoreOf("compacted", pressed), Validation.Series.CoreOf("loose", loose)],
            Boxes = [new(3, 30, 50, 60, "compacted"), new(3, 30, 30, 40, "mixed")],
            Claims =
            [
                new("compacted, peak, °C", 50, 60, Prediction.Peak(pressed), Verdict.InBand),
                new("mixed, peak, °C", 30, 40, Prediction.Peak(loose), Verdict.InBand),
            ],
            Discussion = "The order is right, that the compacted heap is hotter: air drawn through a loose heap "
                + "carries the heat off. But both run hot, the loose one by 20 °C. Litter that has lain "
                + "under cattle for months has lost its quickest part, which the dung class does not "
                + "know, and the ceiling on the draught, set on farm heaps under a cover, is too low for "
                + "bare loose straw. At 10 °C the band is wide because a slow heap hardly starts, so its "
                + "reaching the report is a weak comfort.",
        };
    }

    private static ValidationRow Hyacinth()
    {
        var heap = HeapForecast.Run(TrialHeap.Of(1, 60, new Share("water-hyacinth", 1)) with
        {
            AmbientC = 28,
            Days = 60,
        });
        return new ValidationRow
        {
            Key = "hyacinth",
            Study = "Umsakul, Dissara & Srimuang 2010, water hyacinth alone",
            Reported = "Reached only 40 °C, in week 1.",
            Assumed = "Fresh plants at 93 % moisture; 1 m3; air 28 °C; not turned.",
            IsFitted = true,
            Series = [Validation.Series.CoreOf("1 m3", heap)],
            Boxes = [new(1, 7, 38, 42, "reported")],
            Claims =
            [
                new("peak, 40 ± 2 °C", 38, 42, Prediction.Peak(heap), Verdict.Hit),
                new("day of the peak", 1, 7, Prediction.PeakDay(heap), Verdict.Hit),
            ],
            Discussion = "Fitted, so no proof. What keeps it cool is the little dry matter in so much water, "
                + "not a rule of its own.",
        };
    }
}
