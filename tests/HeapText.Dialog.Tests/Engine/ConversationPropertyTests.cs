using CsCheck;
using HeapText.Dialog.Engine;
using HeapText.Dialog.Text;
using NodaTime;

namespace HeapText.Dialog.Tests.Engine;

public sealed class ConversationPropertyTests
{
    private static readonly string[] Texts =
    [
        "join 41", "join 42", "yes", "no", "1", "2", "3", "4", "5", "0", "7", "1.5", "-3", "3 sacks", "stop", "start",
        "help", "person", "english", "kiswahili", "built", "built yesterday", "turned", "later", "next", "amounts",
        "is it ready", "new heap", "delete my data", "hot", "cold and dry", "smells like urine", "rotten",
        "water runs out", "flies",
        "i burnt my hand", "20 wheelbarrows maize stalks, 5 wheelbarrows green weeds, 14 buckets cow dung",
        "14 wheelbarrows dry grass, 10 wheelbarrows green weeds, 8 buckets goat manure, 2 buckets wood ash",
        "sawdust 4 dung 3", "some goat droppings", "plastic", "2 more sacks dry leaves", "0 buckets dung", "xkqj wpp",
        "", "nimejenga", "nimegeuza", "moto", "nina toroli 20 mabua ya mahindi, ndoo 14 samadi ya ng'ombe",
        "how much for maize", "crop", "method", "hour", "rod", "8 grew", "20 by 4 steps", "i see smoke",
        "grass 14 wheelbarrows, 3 sacks husks", "3 sacks zorbix, 14 buckets manure", "dry grass", "heap 2 is hot",
    ];

    private static readonly Gen<(int Text, int Hours)[]> Seasons =
        Gen.Select(Gen.Int[0, Texts.Length - 1], Gen.Frequency((3, Gen.Const(0)), (2, Gen.Int[1, 200]))).Array[1, 60];

    /// <summary>Whatever is texted and however time passes: the table has a move, every message keeps its budget and
    /// its alphabet, ids never repeat, nothing is said unasked at night, and the next wake lies ahead.</summary>
    [Fact]
    public void AnySeason_KeepsTheRulesOfTheConversation() => Seasons.Sample(season =>
    {
        var talker = new Talker();
        HashSet<string> ids = [];
        talker.Hear("join 41", "yes");
        foreach (var (text, hours) in season)
        {
            var reminders = talker.Pass(Duration.FromHours(hours));
            Assert.All(reminders, r => AssertDaytime(r.At));
            Assert.All(reminders, r => AssertGood(r.Message.Text, r.Message.Id, ids));
            talker.Hear(Texts[text]);
            Assert.All(talker.Says, m => AssertGood(m.Text, m.Id, ids));
            Assert.True(talker.NextDue is null || talker.NextDue >= talker.Now);
            Assert.True(talker.Farmer!.Heaps.Count <= Farmer.MostHeaps + 2);
        }
    }, iter: 2_000);

    [Fact]
    public void Stop_AtAnyMoment_EndsRemindersAtOnce() => Seasons.Sample(season =>
    {
        var talker = new Talker().Hear("join 41", "yes");
        foreach (var (text, hours) in season)
        {
            talker.Pass(Duration.FromHours(hours));
            talker.Hear(Texts[text]);
        }
        talker.Hear("stop");

        Assert.Null(talker.NextDue);
        Assert.Empty(talker.Pass(Duration.FromDays(100)));
    }, iter: 500);

    /// <summary>However the talk broke off: what is asked without an answer ends, and no heap is asked after twice in a
    /// day.</summary>
    [Fact]
    public void Silence_AfterAnySeason_ComesToRestWithoutNagging() => Seasons.Sample(season =>
    {
        var talker = new Talker().Hear("join 41", "yes");
        foreach (var (text, hours) in season)
        {
            talker.Pass(Duration.FromHours(hours));
            talker.Hear(Texts[text]);
        }
        talker.Pass(Duration.FromDays(1));

        var reminders = talker.Pass(Duration.FromDays(700));

        Assert.Null(talker.NextDue);
        var turns = reminders.GroupBy(r => r.At).Select(turn => turn.Last()).ToList();
        Assert.All(turns.GroupBy(turn => turn.At.InUtc().Date),
            day => Assert.True(day.Count() <= Farmer.MostHeaps + 1, day.First().Message.Text));
        Assert.All(turns.GroupBy(turn => (turn.At.InUtc().Date, turn.Message.Text)), same => Assert.Single(same));
    }, iter: 500);

    private static void AssertGood(string text, string id, HashSet<string> ids)
    {
        var fitting = Fit.Measure(text);
        Assert.True(fitting is { Segments: <= 2, Encoding: TextEncoding.Gsm7 }, text);
        Assert.True(ids.Add(id), id);
        Assert.DoesNotContain('{', text);
    }

    private static void AssertDaytime(Instant at)
    {
        var hour = at.InZone(DateTimeZoneProviders.Tzdb[Talker.Zone]).Hour;
        Assert.InRange(hour, 6, 18);
    }
}
