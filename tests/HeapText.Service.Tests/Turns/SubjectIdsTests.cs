using HeapText.Service.Turns;

namespace HeapText.Service.Tests.Turns;

public sealed class SubjectIdsTests
{
    [Fact]
    public void New_Always_HasTwentySixCharactersOfBase32()
    {
        Assert.Matches("^[a-z2-7]{26}$", SubjectIds.New());
    }

    [Fact]
    public void New_ManyTimes_IsNeverTheSameAndUsesEveryCharacterAtEveryPlace()
    {
        var ids = Enumerable.Range(0, 5000).Select(_ => SubjectIds.New()).ToList();

        Assert.Equal(ids.Count, ids.Distinct().Count());
        for (var place = 0; place < 25; place++) Assert.Equal(32, ids.Select(id => id[place]).Distinct().Count());
        // 128 bits fill 25.6 characters: the last one carries three bits.
        Assert.Equal(8, ids.Select(id => id[25]).Distinct().Count());
    }
}
