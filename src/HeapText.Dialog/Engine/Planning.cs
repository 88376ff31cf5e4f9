using HeapText.Agronomy.Heap;
using HeapText.Agronomy.Recipes;
using HeapText.Dialog.Wording;

namespace HeapText.Dialog.Engine;

/// <summary>From a whole stock to a recipe with its cautions, or to what must be brought first.</summary>
internal static class Planning
{
    private const int DaysToBuildPrompt = 3;
    private const double LitresOfBucket = 20;

    /// <summary>Works out the recipe of the drafted stock and sends what follows from it.</summary>
    public static void Plan(Talk talk)
    {
        var stock = Stock(talk);
        var method = MethodAdvice.MethodOf(talk);
        var result = Solve(talk, stock, method);
        if (result is RecipeResult.Solved solved) SendRecipe(talk, stock, method, solved);
        else AskToBring(talk, result.Missing, makesSmallHeap: Solve(talk, stock, Small(talk)) is RecipeResult.Solved);
    }

    /// <summary>Makes a small heap of the drafted stock, as was offered.</summary>
    public static void PlanSmall(Talk talk)
    {
        var stock = Stock(talk);
        if (Solve(talk, stock, Small(talk)) is RecipeResult.Solved solved)
            SendRecipe(talk, stock, Small(talk), solved);
        else Plan(talk);
    }

    /// <summary>Works out a heap that stands on paper only by the farmer's new method.</summary>
    public static void PlanAnew(Talk talk, HeapRecord heap)
    {
        talk.Farmer = talk.Farmer with
        {
            Draft = new StockDraft
            {
                Items = [.. heap.Stock.Select(p => new DraftItem(p.Material, p.Amount, p.Measure))],
            },
        };
        Plan(talk);
    }

    private static HeapMethod Small(Talk talk) => talk.Office.Methods[HeapMethods.SmallKey];

    private static List<Portion> Stock(Talk talk) =>
        [.. talk.Draft.Items.Select(i => new Portion(i.Material, i.Amount!.Value, i.Measure!))];

    private static RecipeResult Solve(Talk talk, List<Portion> stock, HeapMethod method) =>
        RecipeSolver.Solve(new RecipeRequest
        {
            Stock =
            [
                .. stock.Select(p => new StockItem(p.Material, (double)p.Amount, p.Measure)
                {
                    Given = talk.Office.District.For(p.Material),
                }),
            ],
            Measures = talk.Office.District.LocalMeasures(),
            Method = method,
            WithMore = true,
        });

    /// <summary>The recipe of a heap that is planned or stands, in one message or two.</summary>
    public static void SayRecipe(Talk talk, HeapRecord heap)
    {
        var plan = heap.Plan;
        var rounds = ("rounds", (Value)new Value.Count("rounds", plan.Rounds));
        var water = ("water", (Value)new Value.Buckets(plan.WaterBucketsPerRound));
        var dry = plan.WaterBucketsPerRound == 0;
        var whole = ("portions", (Value)new Value.Portions(plan.PerRound));
        if (dry && talk.Fits(heap, Catalogue.RecipeDry, rounds, whole))
        {
            talk.SayOf(heap, Catalogue.RecipeDry, rounds, whole);
            return;
        }
        if (!dry && talk.Fits(heap, Catalogue.Recipe, rounds, whole, water))
        {
            talk.SayOf(heap, Catalogue.Recipe, rounds, whole, water);
            return;
        }
        var first = plan.PerRound.Count - 1;
        while (!talk.Fits(heap, Catalogue.RecipeFirst, rounds, Upto(first))) first--;
        talk.SayOf(heap, Catalogue.RecipeFirst, rounds, Upto(first));
        var rest = ("portions", (Value)new Value.Portions([.. plan.PerRound.Skip(first)]));
        if (dry) talk.SayOf(heap, Catalogue.RecipeThenDry, rest);
        else talk.SayOf(heap, Catalogue.RecipeThen, rest, water);

        (string, Value) Upto(int count) => ("portions", new Value.Portions([.. plan.PerRound.Take(count)]));
    }

    /// <summary>How big the heap is, and what to text when it stands.</summary>
    public static void SaySize(Talk talk, HeapRecord heap)
    {
        var width = ("width", (Value)new Value.Metres(heap.Plan.Width));
        var length = ("length", (Value)new Value.Metres(heap.Plan.Length));
        var height = ("height", (Value)new Value.Metres(heap.Plan.Height));
        switch (talk.Office.MethodOf(heap.Method).Bounds.Form)
        {
            case HeapForm.Open: talk.SayOf(heap, Catalogue.HeapSize, width, length, height); break;
            case HeapForm.Pit: talk.SayOf(heap, Catalogue.PitSize, width, length, height); break;
            case HeapForm.Ring: talk.SayOf(heap, Catalogue.RingSize, width, height); break;
        }
    }

    /// <summary>What to bring before a heap can be built.</summary>
    public static void SayWhatToBring(Talk talk)
    {
        if (talk.Draft.Missing is not { Count: > 0 } missing)
        {
            talk.Say(Catalogue.BringAnything);
            return;
        }
        talk.Say(Catalogue.Bring, ("portions", new Value.Portions(missing)));
        if (talk.Draft.MakesSmallHeap) talk.Say(Catalogue.OrSmallHeap);
        if (talk.Draft.Substitutes.Count > 0)
            talk.Say(Catalogue.BringInstead, ("material", new Value.Material(missing[0].Material)),
                ("materials", new Value.Materials(talk.Draft.Substitutes)));
    }

    private static void AskToBring(Talk talk, IReadOnlyList<Missing> missing, bool makesSmallHeap)
    {
        talk.Ask(Cue.StockTooSmall);
        talk.Farmer = talk.Farmer with
        {
            Draft = talk.Draft with
            {
                MenuStep = null,
                Missing = [.. missing.Select(m => new Portion(m.Material, (decimal)m.Amount, m.Measure))],
                Substitutes = missing.Count > 0 ? missing[0].Substitutes : [],
                MakesSmallHeap = makesSmallHeap,
            },
        };
        SayWhatToBring(talk);
    }

    private static void SendRecipe(
        Talk talk, IReadOnlyList<Portion> stock, HeapMethod method, RecipeResult.Solved solved)
    {
        var heap = Planned(talk, stock, method, solved);
        var finished = talk.Farmer.Heaps.Where(h => h.Step is HeapStep.Ready or HeapStep.GivenUp).SkipLast(1);
        var before = talk.Farmer.Heaps.FirstOrDefault(h => h.Number == heap.Number);
        talk.Farmer = talk.Farmer with { Draft = null, Heaps = [.. talk.Farmer.Heaps.Except(finished)] };
        talk.Put(heap);
        talk.Ask(Cue.RecipeSent, heap);
        SayRecipe(talk, heap);
        SaySize(talk, heap);
        SayCautions(talk, heap, before);
        var others = solved.Recipe.Heaps - 1 + solved.More.Sum(more => more.Heaps);
        if (others > 0) talk.Say(Catalogue.MoreHeaps, ("heaps", new Value.Count("heaps", others)));
        else if (heap.Plan.LeftOver.Count > 0)
            talk.Say(Catalogue.LeftOver, ("materials", new Value.Materials(heap.Plan.LeftOver)));
    }

    /// <summary>What to take care of; of a recipe that was sent before and changed, only what is new.</summary>
    private static void SayCautions(Talk talk, HeapRecord heap, HeapRecord? before)
    {
        if (before is null)
        {
            talk.Say(Catalogue.StageMaterials);
            talk.Say(Catalogue.CareBuilding);
        }
        var dusty = Dusty(heap).Except(before is null ? [] : Dusty(before)).ToList();
        if (dusty.Count > 0) talk.Say(Catalogue.CareDust, ("materials", new Value.Materials(dusty)));
        if (talk.Office.MethodOf(heap.Method).Bounds.Form == HeapForm.Pit && before?.Method != heap.Method)
            talk.Say(Catalogue.CarePit);
        var hadAsh = before?.Plan.Cautions.Contains(Cautions.AshCold) ?? false;
        if (!hadAsh && heap.Plan.Cautions.Contains(Cautions.AshCold)) talk.Say(Catalogue.CareAsh);
    }

    private static IEnumerable<string> Dusty(HeapRecord heap) =>
        heap.Plan.PerRound.Select(portion => portion.Material).Where(Cautions.IsDusty);

    /// <summary>The heap that stands on paper only is planned anew; else a new one is numbered.</summary>
    private static HeapRecord Planned(
        Talk talk, IReadOnlyList<Portion> stock, HeapMethod method, RecipeResult.Solved solved)
    {
        var recipe = solved.Recipe;
        var number = talk.Farmer.Heaps.FirstOrDefault(h => h.Step == HeapStep.Planned)?.Number;
        if (number is null) talk.Farmer = talk.Farmer with { HeapsPlanned = talk.Farmer.HeapsPlanned + 1 };
        var used = recipe.PerRound.Select(layer => layer.Material).ToHashSet();
        return new HeapRecord
        {
            Number = number ?? talk.Farmer.HeapsPlanned,
            Stock = stock,
            Method = method.Key,
            Step = HeapStep.Planned,
            Due = talk.Today.PlusDays(DaysToBuildPrompt),
            Plan = new HeapPlan
            {
                Rounds = recipe.Rounds,
                PerRound = [.. recipe.PerRound.Select(l => new Portion(l.Material, (decimal)l.Amount, l.Measure))],
                WaterBucketsPerRound = HalfBuckets(recipe.WaterPerRound.Litres),
                Width = recipe.Dimensions.WidthM,
                Length = recipe.Dimensions.LengthM,
                Height = recipe.Dimensions.HeightM,
                Cautions = solved.Cautions,
                LeftOver = [.. solved.Unused.Select(item => item.Material).Distinct().Except(used)],
            },
        };
    }

    /// <summary>Litres as buckets of 20 litres, to the nearest half; never nought when some water is needed.</summary>
    private static decimal HalfBuckets(double litres)
    {
        const double trifle = 1;
        if (litres < trifle) return 0;
        return Math.Max(0.5m, Math.Round((decimal)(litres / LitresOfBucket) * 2, MidpointRounding.AwayFromZero) / 2);
    }
}
