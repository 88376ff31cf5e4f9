using NodaTime;

namespace HeapText.Dialog.Tests.Engine;

public sealed class AnswerLoopTests
{
    [Theory]
    [InlineData("I am away and will read this tomorrow. Message {0}.")]
    [InlineData("zqxw vvbn {0}")]
    [InlineData("Please call me back later, thank you {0}")]
    [InlineData("help")]
    public void AnotherMachine_ThatAnswersEachMessage_GetsFiveAnswersAtMost(string robot)
    {
        var talker = Talker.WithHeap();

        var answers = TalkWithRobot(talker, robot);

        Assert.InRange(answers, 1, 5);
    }

    [Fact]
    public void AnotherMachine_ThatHasNotJoined_GetsOneAnswerAnHour()
    {
        Assert.Equal(1, TalkWithRobot(new Talker(), "Thank you for your message {0}"));
    }

    [Fact]
    public void SomethingNew_AfterTheCircleWasBroken_IsAnsweredAtOnce()
    {
        var talker = Talker.WithHeap();
        TalkWithRobot(talker, "help");
        Assert.Empty(talker.Hear("help").Says);

        Assert.NotEmpty(talker.Hear("hot").Says);
        Assert.NotEmpty(talker.Hear("help").Says);
    }

    [Fact]
    public void TheSameQuestion_AnHourLater_IsAnsweredAgain()
    {
        var talker = Talker.WithHeap();
        TalkWithRobot(talker, "help");

        talker.Now += Duration.FromHours(1);

        Assert.NotEmpty(talker.Hear("help").Says);
    }

    [Fact]
    public void WhatATextChanges_IsKept_ThoughItsAnswerIsNot()
    {
        var talker = Talker.WithHeap();
        TalkWithRobot(talker, "person");

        Assert.NotNull(talker.Farmer!.Concern);
    }

    // Goes on as long as it is answered, half a minute each time.
    private static int TalkWithRobot(Talker talker, string text)
    {
        const int enough = 50;
        var answers = 0;
        for (var n = 0; n < enough; n++)
        {
            talker.Now += Duration.FromSeconds(30);
            talker.Hear(string.Format(System.Globalization.CultureInfo.InvariantCulture, text, n));
            if (talker.Says.Count == 0) return answers;
            answers++;
        }
        return answers;
    }
}
