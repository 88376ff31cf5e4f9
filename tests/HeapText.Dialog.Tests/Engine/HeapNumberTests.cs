using HeapText.Agronomy.Heap;
using HeapText.Dialog.Engine;

namespace HeapText.Dialog.Tests.Engine;

public sealed class HeapNumberTests
{
    [Theory]
    [InlineData("heap 2 is hot")]
    [InlineData("heap two is hot")]
    [InlineData("Heap no 2: hot")]
    [InlineData("lundo la 2 ni moto")]
    public void Report_ThatNamesItsHeap_IsNotAskedWhich(string text)
    {
        var talker = WithTwoHeaps().Hear(text);

        Assert.NotEqual(Stage.AskingHeap, talker.Farmer!.Stage);
        Assert.Equal((null, Heat.Hot), (talker.Farmer.Heaps[0].Check, talker.Farmer.Heaps[1].Check?.Heat));
    }

    [Theory]
    [InlineData("heap1 hot heap2 cold")]
    [InlineData("hot heap 1, cold heap 2")]
    public void Report_OnTwoHeaps_IsTakenForEach(string text)
    {
        var talker = WithTwoHeaps().Hear(text);

        Assert.Equal((Heat.Hot, Heat.Cold), (talker.Farmer!.Heaps[0].Check?.Heat, talker.Farmer.Heaps[1].Check?.Heat));
    }

    [Fact]
    public void Report_OnAnotherHeapThanTheQuestion_IsOfTheHeapItNames()
    {
        var talker = WithTwoHeaps();
        talker.Farmer = talker.Farmer! with { Stage = Stage.AskingHeat, TalkOf = 1, AskedAt = talker.Now };

        talker.Hear("heap 2 is hot");

        Assert.Equal((null, Heat.Hot), (talker.Farmer.Heaps[0].Check, talker.Farmer.Heaps[1].Check?.Heat));
    }

    [Theory]
    [InlineData("heap is hot")]
    [InlineData("heap 7 is hot")]
    public void Report_ThatNamesNoHeap_IsAskedWhich(string text) =>
        Assert.Equal(Stage.AskingHeap, WithTwoHeaps().Hear(text).Farmer!.Stage);

    [Fact]
    public void HeapBeforeAnAmount_NamesNone()
    {
        var reading = Repository.Dialogs.Reader.Read("for the heap 2 buckets cow dung", "en");

        Assert.Null(reading.Heap);
        Assert.Equal(new("cow-dung", 2, "bucket"), Assert.Single(reading.Materials));
    }

    private static Talker WithTwoHeaps()
    {
        var talker = Talker.WithHeap();
        talker.Farmer = talker.Farmer! with { Heaps = [talker.Heap, talker.Heap with { Number = 2 }] };
        return talker;
    }
}
