using HeapText.Dialog.Engine;

namespace HeapText.Dialog.Tests.Engine;

public sealed class MethodAdviceTests
{
    private const string Stock = "20 wheelbarrows maize stalks, 15 wheelbarrows green weeds, 12 buckets cow dung";
    private const string Little = "8 wheelbarrows dry grass, 3 wheelbarrows green weeds, 3 buckets cow dung";

    [Theory]
    [InlineData("1", "2", "1", "dry-season-pit")]
    [InlineData("3", "1", "1", "hot-turned")]
    [InlineData("2", "1", "2", "daily-then-weekly")]
    [InlineData("3", "2", "3", "slow-heap")]
    public void RainWaterAndLabour_DecideTheNextHeap(string rain, string water, string labour, string key)
    {
        var talker = new Talker().Hear("join 41", "yes", "method", rain, water, labour, Stock);

        Assert.Equal(key, talker.Heap.Method);
    }

    [Fact]
    public void HeapOnPaperOnly_IsPlannedAnewByTheNewMethod()
    {
        var talker = new Talker().Hear("join 41", "yes", Stock, "method", "1", "2", "3");

        Assert.Equal((1, "dry-season-pit"), (talker.Heap.Number, talker.Heap.Method));
        Assert.Contains("Dig the pit", talker.Said, StringComparison.Ordinal);
        Assert.Contains("no child or animal falls in", talker.Said, StringComparison.Ordinal);
    }

    [Fact]
    public void HeapThatStands_KeepsItsMethod()
    {
        var talker = Talker.WithHeap().Hear("method", "1", "2", "3");

        Assert.Equal("daily-then-weekly", talker.Heap.Method);
        Assert.Equal("dry-season-pit", talker.Farmer!.Method);
    }

    [Fact]
    public void MethodOfTheGroup_IsUsedWhereTheFarmerWasAdvisedNone()
    {
        var office = new Office { GroupMethods = new Dictionary<int, string> { [41] = "slow-heap" } };

        Assert.Equal("slow-heap", new Talker(office: office).Hear("join 41", "yes", Stock).Heap.Method);
    }

    [Fact]
    public void TooLittleForAHeap_MayBeASmallOneInARing()
    {
        var talker = new Talker().Hear("join 41", "yes", Little);
        Assert.Contains("send 2", talker.Said, StringComparison.Ordinal);

        talker.Hear("2");

        Assert.Equal("small-ring", talker.Heap.Method);
        Assert.Contains("ring of sticks", talker.Said, StringComparison.Ordinal);
    }

    [Fact]
    public void TooLittleForAnyHeap_IsOfferedNone()
    {
        var talker = new Talker().Hear("join 41", "yes", "1 bucket dry grass, 1 bucket cow dung");

        Assert.False(talker.Farmer!.Draft!.MakesSmallHeap);
        Assert.DoesNotContain("send 2", talker.Said, StringComparison.Ordinal);
    }

    [Fact]
    public void StockForMoreHeaps_IsTold() =>
        Assert.Contains("you can build", new Talker().Hear("join 41", "yes",
            "200 wheelbarrows maize stalks, 120 wheelbarrows green weeds, 90 buckets cow dung").Said,
            StringComparison.Ordinal);
}
