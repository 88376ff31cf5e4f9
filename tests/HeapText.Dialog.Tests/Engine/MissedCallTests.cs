using HeapText.Dialog.Engine;
using NodaTime;

namespace HeapText.Dialog.Tests.Engine;

public sealed class MissedCallTests
{
    [Fact]
    public void Farmer_WithAnOpenQuestion_IsAskedItAgain()
    {
        var talker = new Talker().Hear("join 41", "yes");
        var asked = talker.Says[^1].Text;

        talker.Ring();

        Assert.Equal(Stage.AskingStock, talker.Farmer!.Stage);
        Assert.Equal(asked, talker.Said);
    }

    [Fact]
    public void Farmer_WithAHeap_HearsWhatComesNext()
    {
        var next = Talker.WithHeap().Hear("next").Said;

        Assert.Equal(next, Talker.WithHeap().Ring().Said);
    }

    [Fact]
    public void Stranger_HearsHowToJoin_OnceAnHour()
    {
        var talker = new Talker().Ring();
        Assert.Single(talker.Says);

        Assert.Empty(talker.Ring().Says);
        talker.Now += Duration.FromHours(1);
        Assert.Single(talker.Ring().Says);
    }

    [Fact]
    public void WhoIsAskedForConsent_IsAskedAgain_OnceAnHour()
    {
        var talker = new Talker().Hear("join 41");
        var asked = talker.Said;

        Assert.Equal(asked, talker.Ring().Said);
        Assert.Empty(talker.Ring().Says);
    }

    [Fact]
    public void WhoHasStopped_HearsHowToStart_OnceAnHour()
    {
        var talker = Talker.WithHeap().Hear("stop");

        Assert.Contains("START", talker.Ring().Said, StringComparison.Ordinal);
        Assert.Empty(talker.Ring().Says);
    }
}
