using HeapText.Dialog.Replies;

namespace HeapText.Dialog.Tests.Replies;

/// <summary>What is no stock though it names a material and an amount: a question, a wish, a stop, an alarm.</summary>
public sealed class MeantOtherwiseTests
{
    [Theory]
    [InlineData("is 3 buckets enough")]
    [InlineData("is 3 buckets of dung enough")]
    [InlineData("can i add 2 buckets of ash?")]
    [InlineData("i need 3 buckets of dung")]
    [InlineData("where do I get 3 buckets ash")]
    [InlineData("instead of ash")]
    public void Read_QuestionOrWish_ListsNothing(string text)
    {
        var reading = Read(text);

        Assert.Empty(reading.Materials);
        Assert.Null(reading.BareNumber);
    }

    [Theory]
    [InlineData("can i add ash to 2 buckets dung")]
    [InlineData("how are you, 2 buckets dung")]
    [InlineData("can i add ash. i have 2 buckets dung")]
    public void Read_StockBesideAQuestion_IsListed(string text) =>
        Assert.Equal(new("cow-dung", 2, "bucket"), Assert.Single(Read(text).Materials));

    [Theory]
    [InlineData("en", "STOP 2 buckets dung")]
    [InlineData("en", "stop sending me messages")]
    [InlineData("sw", "acha ndoo 2 samadi")]
    [InlineData("fr", "stop 2 seaux de bouse")]
    [InlineData("pt", "pare 2 baldes de estrume")]
    public void Read_StopFirst_IsStopWhateverFollows(string language, string text) =>
        Assert.Equal(Intent.Stop, TestReader.Sut.Read(text, language).Intent);

    [Fact]
    public void Read_StopOfAnotherThing_IsNoStop() => Assert.NotEqual(Intent.Stop, Read("stop the smell how").Intent);

    [Theory]
    [InlineData("en", "my eyes are burning")]
    [InlineData("en", "lime in my eyes")]
    [InlineData("fr", "feu")]
    [InlineData("am", "እሳት")]
    [InlineData("sw", "moto!! lundo linaungua")]
    public void Read_Alarm_IsUrgentAndNoCheck(string language, string text)
    {
        var reading = TestReader.Sut.Read(text, language);

        Assert.True(reading.Urgent);
        Assert.True(reading.Check.IsEmpty);
    }

    private static Reading Read(string text) => TestReader.Sut.Read(text, "en");
}
