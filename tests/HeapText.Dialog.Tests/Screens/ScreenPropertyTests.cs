using CsCheck;
using HeapText.Dialog.Engine;
using HeapText.Dialog.Tests.Engine;
using HeapText.Dialog.Text;
using NodaTime;

namespace HeapText.Dialog.Tests.Screens;

public sealed class ScreenPropertyTests
{
    private static readonly string[] Entries =
    [
        "#", "*", "0", "1", "2", "3", "4", "5", "6", "7", "8", "9", "10", "11", "12", "20", "41", "1*5", "", "menu",
        "more", "back", "#", "1", "2", "3", "yes", "no", "stop", "start", "built", "turned", "later", "next", "hot",
        "cold and dry", "smells like urine", "3 sacks", "2 sacks dry grass", "i burnt my hand", "kiswahili", "english",
        "new heap", "crop", "method", "xkqj wpp", "-3", "**",
        "20 wheelbarrows maize stalks, 5 wheelbarrows green weeds, 14 buckets cow dung",
    ];

    private static readonly string[] Moves = ["#", "*", "", "menu", "back", "more"];

    private static readonly Gen<(int Kind, int Entry, int Hours)[]> Walks = Gen.Select(
        Gen.Frequency((10, Gen.Const(0)), (3, Gen.Const(1)), (1, Gen.Const(2))), Gen.Int[0, Entries.Length - 1],
        Gen.Frequency((6, Gen.Const(0)), (1, Gen.Int[1, 200]))).Array[1, 80];

    /// <summary>Whatever is entered, dialled anew or texted in between: each screen keeps its limits and tells the way
    /// on, messages keep their ids, and reading on comes to an end.</summary>
    [Fact]
    public void AnyWalk_KeepsTheRulesOfTheScreen() => Walks.Sample(walk =>
    {
        var talker = new Talker().Dial();
        HashSet<string> ids = [];
        foreach (var (kind, entry, hours) in walk)
        {
            if (hours > 0) Assert.All(talker.Pass(Duration.FromHours(hours)), r => Assert.True(ids.Add(r.Message.Id)));
            if (kind == 0) talker.Enter(Entries[entry]);
            else if (kind == 1) talker.Dial();
            else talker.Hear(Entries[entry]);
            Assert.All(talker.Says, message => Assert.True(ids.Add(message.Id)));
            AssertGood(talker);
        }

        talker.Dial();
        for (var page = 0; IsMoreToRead(talker); page++)
        {
            Assert.True(page < 40);
            AssertGood(talker.Enter("#"));
        }
    }, iter: 1_000);

    /// <summary>What was told of a heap, and stock with its measure, survives any moving about.</summary>
    [Fact]
    public void MovingAbout_TakesNothing() => Gen.Int[0, Moves.Length - 1].Array[1, 30]
        .Sample(moves =>
        {
            var talker = Talker.WithHeap();
            talker.Pass(Duration.FromDays(3));
            talker.Dial().Enter("1");
            var heap = talker.Heap;

            talker.Enter([.. moves.Select(move => Moves[move])]);

            Assert.Equivalent(heap, talker.Heap);
            Assert.Equal(Stage.AskingSmell, talker.Farmer!.Stage);
            Assert.True(talker.Screen.Open);
        }, iter: 500);

    private static bool IsMoreToRead(Talker talker) =>
        talker.Screen.Open && talker.Screen.Text.Split('\n')[^1].StartsWith('#');

    private static void AssertGood(Talker talker)
    {
        var fitting = Fit.Measure(talker.Screen.Text);
        Assert.True(fitting.UssdPages == 1, talker.Screen.Text);
        Assert.NotEmpty(talker.Screen.Text);
        Assert.DoesNotContain('{', talker.Screen.Text);
        Assert.True(talker.NextDue is null || talker.NextDue >= talker.Now);
    }
}
