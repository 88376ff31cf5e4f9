using HeapText.Agronomy.Materials;
using HeapText.Agronomy.Recipes;
using HeapText.Agronomy.Recipes.Village;

namespace HeapText.Agronomy.Tests.Recipes.Village;

public class VillageBalanceTests
{
    [Theory]
    [InlineData(2, 4, 61, 60)]
    [InlineData(2, 6, 62, 40)]
    [InlineData(3, 4, 63, 40)]
    [InlineData(4, 3, 64, 40)]
    public void Plan_OfAFewHouseholds_IsTheBestOfAllSharings(int households, int goods, int seed, int villages)
    {
        var random = new Random(seed);
        var moved = 0;

        for (var i = 0; i < villages; i++)
        {
            var request = RandomVillages.Few(random, households, goods);
            var (heaps, carried) = new ExhaustiveVillage(request).Best();

            var plan = VillageBalance.Solve(request);

            Assert.True(plan.IsProven);
            Assert.Equal(heaps, plan.Households.Count(house => house.Builds));
            Assert.Equal(carried, plan.Moves.Sum(move => move.Litres), 6);
            moved += plan.Moves.Count > 0 ? 1 : 0;
        }

        Assert.True(moved > villages / 10, $"only {moved} of {villages} villages had anything to move");
    }

    [Fact]
    public void Plan_OfOneWithStrawAndOneWithDung_LetsBothBuild()
    {
        var plan = Solve(
            ("Neema", [new("rice-straw", 40, "wheelbarrow")]),
            ("Baraka", [new("goat-manure", 20, "bucket")]));

        Assert.All(plan.Households, house => Assert.False(house.Before));
        Assert.All(plan.Households, house => Assert.True(house.Builds));
        Assert.Contains(plan.Moves, move => move is { From: "Baraka", To: "Neema", Material: "goat-manure" });
        Assert.Contains(plan.Moves, move => move is { From: "Neema", To: "Baraka", Material: "rice-straw" });
        Assert.Empty(plan.Lacking);
    }

    [Fact]
    public void Plan_OfAVillageThatOnlyHasStraw_SaysWhatItLacksAndMovesNothing()
    {
        var plan = Solve(
            ("Neema", [new("rice-straw", 40, "wheelbarrow")]),
            ("Baraka", [new("rice-straw", 30, "wheelbarrow"), new("plastic", 2, "sack")]));

        Assert.Empty(plan.Moves);
        var lacking = Assert.Single(plan.Lacking);
        Assert.Equal((MaterialRole.Manure, Lack.TooMuchCarbon), (lacking.Role, lacking.Why));
        Assert.True(lacking.Amount > 5);
        Assert.Empty(plan.Surplus);
    }

    [Fact]
    public void Plan_OfAVillageWithPlenty_NamesWhatIsTooMuch()
    {
        StockItem[] plenty =
            [new("rice-straw", 40, "wheelbarrow"), new("goat-manure", 90, "bucket"), new("plastic", 1, "sack")];

        var plan = Solve(("Neema", plenty));

        Assert.Equal("goat-manure", Assert.Single(plan.Surplus).Material);
        Assert.Empty(plan.Moves);
    }

    [Fact]
    public void Plan_OfNobody_IsEmpty()
    {
        var plan = Solve();

        Assert.Empty(plan.Households);
        Assert.Empty(plan.Moves);
        Assert.True(plan.IsProven);
    }

    [Fact]
    public void Plan_OfManyHouseholds_CanBeCarriedOutAndLeavesNobodyWorseOff()
    {
        var random = new Random(71);
        var (before, after) = (0, 0);

        for (var i = 0; i < 10; i++)
        {
            var request = RandomVillages.Many(random, 5 + (6 * i));
            var plan = VillageBalance.Solve(request);

            AssertCanBeDone(request, plan);
            Assert.All(plan.Households, house => Assert.True(house.Builds || !house.Before));
            before += plan.Households.Count(house => house.Before);
            after += plan.Households.Count(house => house.Builds);
        }

        Assert.True(after > before * 1.25, $"{before} heaps before, {after} after");
    }

    [Fact]
    public void Plan_OfTheSameVillage_IsTheSame()
    {
        var (one, other) = (RandomVillages.Many(new Random(72), 30), RandomVillages.Many(new Random(72), 30));

        Assert.Equal(VillageBalance.Solve(one).Moves, VillageBalance.Solve(other).Moves);
    }

    [Fact]
    public void Request_WithANameGivenTwice_NamesTheField()
    {
        var request = new VillageRequest { Households = [new("Neema", []), new("Neema", [])] };

        Assert.Equal("village[1].name", request.Check()?.Field);
        Assert.Throws<ArgumentException>(() => VillageBalance.Solve(request));
    }

    [Fact]
    public void Request_WithAFaultyStock_NamesTheField()
    {
        var request = new VillageRequest { Households = [new("Neema", [new("cow-dung", -1, "bucket")])] };
        var flat = new VillageRequest { Households = [new("Neema", [])], Space = new HeapSpace(HeightM: 0) };

        Assert.Equal("village[0].stock[0].amount", request.Check()?.Field);
        Assert.Equal("space.heightM", flat.Check()?.Field);
    }

    /// <summary>
    /// Makes the moves one by one on the stocks as given, and builds what is promised from what is there.
    /// </summary>
    private static void AssertCanBeDone(VillageRequest request, VillagePlan plan)
    {
        var stocks = request.Households.ToDictionary(house => house.Name, house => house.Stock.ToList());
        foreach (var move in plan.Moves)
        {
            Assert.True(MaterialTable.TryFind(move.Material, out var material) && !material.IsRefused);
            stocks[move.From].Add(new StockItem(move.Material, -move.Amount, move.Measure));
            stocks[move.To].Add(new StockItem(move.Material, move.Amount, move.Measure));
        }

        foreach (var house in plan.Households)
        {
            StockItem[] stock =
            [
                .. stocks[house.Name].GroupBy(item => (item.Material, item.Measure)).Select(same =>
                    new StockItem(same.Key.Material, same.Sum(item => item.Amount), same.Key.Measure)),
            ];
            Assert.All(stock, item => Assert.True(item.Amount >= 0, $"{house.Name} gives {item.Material} it has not"));
            if (house.After is RecipeResult.Solved heap)
            {
                Assert.Empty(Limits.Broken(stock, heap, HeapSpace.Open));
            }
        }
    }

    private static VillagePlan Solve(params (string Name, StockItem[] Stock)[] households) =>
        VillageBalance.Solve(new VillageRequest
        {
            Households = [.. households.Select(house => new HouseholdStock(house.Name, house.Stock))],
        });
}
