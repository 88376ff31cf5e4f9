using HeapText.Dialog.Engine;
using HeapText.Dialog.Ports;

namespace HeapText.Store.Tests.Contract;

/// <summary>Groups, members, concerns, audit, emptiness.</summary>
public abstract partial class StoreContract
{
    private static readonly Group Upper = new(41, "Upper Ziwani", "sw", "Africa/Dar_es_Salaam", "Trainer");
    private static readonly Group Lower = new(42, "Lower Ziwani", "en", "Africa/Dar_es_Salaam", "Trainer");

    [Fact]
    public async Task Groups_SeveralPut_ByCode()
    {
        var ninth = new Group(9, "Kitalo Ridge", "fr", "Africa/Kinshasa", "Trainer");
        await Store.PutGroup(Lower, Cancel);
        await Store.PutGroup(ninth, Cancel);
        await Store.PutGroup(Upper, Cancel);

        await Reopen();

        Assert.Equal([ninth, Upper, Lower], await Store.Groups(Cancel));
    }

    [Fact]
    public async Task PutGroup_SameCode_ReplacesIt()
    {
        await Store.PutGroup(Upper, Cancel);
        await Store.PutGroup(Upper with { Officer = "Another" }, Cancel);

        Assert.Equal([Upper with { Officer = "Another" }], await Store.Groups(Cancel));
    }

    [Fact]
    public async Task Members_FarmerMovesAndLeaves_FollowTheRecord()
    {
        await Committed(Turn(1, 0) with { Farmer = Record(1, group: 41) });
        await Committed(Turn(2, 0) with { Farmer = Record(2, group: 41) });
        Assert.Equal(Keys(1, 2), (await Store.Members(41, Cancel)).ToHashSet());

        await Committed(Turn(1, 1) with { Farmer = Record(1, group: 42) });
        Assert.Equal(Keys(2), (await Store.Members(41, Cancel)).ToHashSet());
        Assert.Equal(Keys(1), (await Store.Members(42, Cancel)).ToHashSet());

        await Committed(Turn(1, 2));
        Assert.Empty(await Store.Members(42, Cancel));
    }

    [Fact]
    public async Task Members_ManyFarmers_AllGiven()
    {
        await Task.WhenAll(Enumerable.Range(1, 600).Select(
            async n => await Committed(Turn(n, 0) with { Farmer = Record(n, group: 41) })));

        Assert.Equal(Keys([.. Enumerable.Range(1, 600)]), (await Store.Members(41, Cancel)).ToHashSet());
    }

    [Fact]
    public async Task Concerns_Several_OldestFirstWithNumber()
    {
        foreach (var n in new[] { 2, 3, 1 })
            await Committed(Turn(n, 0) with { Farmer = Record(n, concern: Trouble(n)) });

        var open = await Store.Concerns(2, Cancel);

        Assert.Equal(
            [1, 2],
            open.Select(concern => Enumerable.Range(1, 3).Single(n => Number(n) == concern.Number)));
        Assert.Equal(
            new OpenConcern(Store.KeyOf(Number(1)), Number(1), Record(1, concern: Trouble(1)), Trouble(1)), open[0]);
    }

    [Fact]
    public async Task Concerns_Cleared_LeavesTheList()
    {
        await Committed(Turn(1, 0) with { Farmer = Record(1, concern: Trouble(1)) });

        await Committed(Turn(1, 1));

        Assert.Empty(await Store.Concerns(10, Cancel));
    }

    [Fact]
    public async Task OwnWords_SeveralExplained_ByDistrictAndWord()
    {
        OwnWord[] words =
        [
            new("41", "mbondo", "sw", "goat-manure"), new("Ziwani", "blorpy", "en", null),
            new("Ziwani", "zorbix", "en", "plastic"),
        ];
        foreach (var word in words.Reverse()) await Store.ExplainWord(word, Cancel);

        await Reopen();

        Assert.Equal(words, await Store.OwnWords(Cancel));
    }

    [Fact]
    public async Task ExplainWord_AgainInTheDistrict_ReplacesItThereOnly()
    {
        var other = new OwnWord("Marula", "zorbix", "en", "plastic");
        var later = new OwnWord("Ziwani", "zorbix", "sw", "dry-grass");
        await Store.ExplainWord(other, Cancel);
        await Store.ExplainWord(later with { Material = null, Language = "en" }, Cancel);

        await Store.ExplainWord(later, Cancel);

        Assert.Equal([other, later], await Store.OwnWords(Cancel));
    }

    [Fact]
    public async Task OwnWords_ExplainedThroughAnotherStore_AreSeen()
    {
        await using var other = await Open();

        await other.ExplainWord(new OwnWord("41", "mbondo", "sw", "goat-manure"), Cancel);

        Assert.Equal("mbondo", Assert.Single(await Store.OwnWords(Cancel)).Word);
    }

    [Fact]
    public async Task IsEmpty_OwnWordOnly_IsTrue()
    {
        await Store.ExplainWord(new OwnWord("41", "mbondo", "sw", null), Cancel);

        Assert.True(await Store.IsEmpty(Cancel));
    }

    [Fact]
    public async Task AuditTrail_Several_NewestFirst()
    {
        var entries = Enumerable.Range(1, 3)
            .Select(n => new AuditEntry(Noon + Minute * n, "officer", "group.put", $"{n}")).ToArray();
        foreach (var entry in entries) await Store.Audit(entry, Cancel);

        await Reopen();

        Assert.Equal([entries[2], entries[1]], await Store.AuditTrail(2, Cancel));
        Assert.Equal(3, (await Store.AuditTrail(10, Cancel)).Count);
    }

    [Fact]
    public async Task IsEmpty_AuditOnly_IsTrue()
    {
        await Store.Audit(new AuditEntry(Noon, "service", "start", ""), Cancel);

        Assert.True(await Store.IsEmpty(Cancel));
    }

    [Fact]
    public async Task IsEmpty_OneGroup_IsFalse()
    {
        await Store.PutGroup(Upper, Cancel);

        Assert.False(await Store.IsEmpty(Cancel));
    }

    [Fact]
    public async Task IsEmpty_OneFarmer_IsFalse()
    {
        await Committed(Turn(1, 0));

        Assert.False(await Store.IsEmpty(Cancel));
    }

    private static Concern Trouble(int n) => new() { Reason = ConcernReason.Person, Since = Noon + Minute * n };

    private HashSet<FarmerKey> Keys(params int[] numbers) => [.. numbers.Select(n => Store.KeyOf(Number(n)))];
}
