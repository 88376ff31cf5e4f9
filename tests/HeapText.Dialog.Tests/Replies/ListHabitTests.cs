using HeapText.Dialog.Ports;
using HeapText.Dialog.Replies;

namespace HeapText.Dialog.Tests.Replies;

/// <summary>How lists are shortened, put right and added to.</summary>
public sealed class ListHabitTests
{
    [Theory]
    [InlineData("sw", "sina mavi ya ng'ombe, ya mbuzi wala ya kuku")]
    [InlineData("fr", "pas de bouse, de crottes de chevre ni de fiente de poule")]
    public void Read_NothingOfAList_ListsNone(string language, string text) =>
        Assert.Empty(TestReader.Sut.Read(text, language).Materials);

    [Theory]
    [InlineData("sw", "sio gunia tatu ni nne za majivu", "wood-ash", 4, "sack")]
    [InlineData("sw", "si ndoo ni toroli 3 za majivu", "wood-ash", 3, "wheelbarrow")]
    [InlineData("sw", "badala ya 2 weka ndoo 5 za majivu", "wood-ash", 5, "bucket")]
    [InlineData("fr", "au lieu de 3 seaux mettez 5 seaux de bouse", "cow-dung", 5, "bucket")]
    [InlineData("en", "instead of 2 buckets, 5 buckets of ash", "wood-ash", 5, "bucket")]
    [InlineData("en", "not 3 but 4 buckets of ash", "wood-ash", 4, "bucket")]
    [InlineData("en", "I said 3 it is 4 buckets ash", "wood-ash", 4, "bucket")]
    [InlineData("en", "i said 3 buckets ash", "wood-ash", 3, "bucket")]
    [InlineData("sw", "napier gunia 2 kavu", "dry-napier", 2, "sack")]
    [InlineData("sw", "samadi ndoo 3 (ya mbuzi)", "goat-manure", 3, "bucket")]
    [InlineData("en", "grass 3 sacks dry", "dry-grass", 3, "sack")]
    [InlineData("sw", "maharage makavu (mabua) gunia 3", "bean-haulm", 3, "sack")]
    [InlineData("sw", "nitumie vumbi la mbao? ninalo gunia 3", "sawdust", 3, "sack")]
    [InlineData("en", "can i use sawdust? i have 3 sacks", "sawdust", 3, "sack")]
    [InlineData("sw", "kopo 2 za majivu", "wood-ash", 2, null)]
    public void Read_OneMaterial_IsTheOneMeant(
        string language, string text, string material, int amount, string? measure)
    {
        var reading = TestReader.Sut.Read(text, language);

        Assert.Equal(new(material, amount, measure), Assert.Single(reading.Materials));
        Assert.Empty(reading.Refused);
        Assert.True(reading.Check.IsEmpty);
    }

    [Theory]
    [InlineData("en", "sacks: 4 dry leaves, 2 ash", 2, "sack")]
    [InlineData("fr", "sacs: 4 feuilles seches, 2 cendre", 2, "sack")]
    [InlineData("en", "4 sacks dry leaves, same of ash", 4, "sack")]
    [InlineData("fr", "4 sacs feuilles seches, cendre pareil", 4, "sack")]
    public void Read_MeasureSaidOnce_HoldsForTheNext(string language, string text, int amount, string measure) =>
        Assert.Equal(
            [new("dry-leaves", 4, measure), new("wood-ash", amount, measure)],
            TestReader.Sut.Read(text, language).Materials);

    [Theory]
    [InlineData("sw", "mabua ya alizeti gunia 3", "alizeti")]
    [InlineData("fr", "tiges de manioc 3 sacs", "manioc")]
    [InlineData("en", "3 sacks sunflower stalks", "sunflower")]
    public void Read_PartOfACropThatIsNoMaterial_IsUnknownWithItsAmount(string language, string text, string crop)
    {
        var reading = TestReader.Sut.Read(text, language);

        Assert.Empty(reading.Materials);
        var thing = Assert.Single(reading.Unsettled);
        Assert.Equal((crop, 3m, "sack"), (thing.Word, thing.Amount, thing.Measure));
    }

    [Fact]
    public void Read_CropThatTheDistrictExplained_IsThatMaterial()
    {
        var reader = TestReader.Sut.With([new OwnWord("mlima", "alizeti", "sw", "sorghum-stover")]);

        Assert.Equal(
            new("sorghum-stover", 3, "sack"), Assert.Single(reader.Read("mabua ya alizeti gunia 3", "sw").Materials));
    }

    [Fact]
    public void Read_CallBesideAnAlarm_IsUrgentAndNoCheck()
    {
        var reading = TestReader.Sut.Read("come quick heap is burning", "en");

        Assert.True(reading.Urgent);
        Assert.True(reading.Check.IsEmpty);
    }

    [Theory]
    [InlineData("en", "hot last week but now cold")]
    [InlineData("fr", "chaud la semaine derniere mais froid maintenant")]
    public void Read_HeatThenAndNow_IsThatOfNow(string language, string text) =>
        Assert.Equal("cold", Canonical.Key(TestReader.Sut.Read(text, language).Check.Heat!.Value));
}
