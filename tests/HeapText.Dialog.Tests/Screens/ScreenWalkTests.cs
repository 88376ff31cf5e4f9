using HeapText.Agronomy.Materials;
using HeapText.Dialog.Engine;
using HeapText.Dialog.Ports;
using HeapText.Dialog.Replies;
using HeapText.Dialog.Screens;
using HeapText.Dialog.Tests.Engine;
using HeapText.Dialog.Text;
using HeapText.Dialog.Wording;

namespace HeapText.Dialog.Tests.Screens;

/// <summary>Every screen of every language, with the longest values, keeps its limits and cuts no word.</summary>
public sealed class ScreenWalkTests
{
    private static readonly string LongName = new('m', Phrasebook.LongestName);

    private static Phrasebook Book => Repository.Dialogs.Book;

    public static TheoryData<string, bool> Alphabets
    {
        get
        {
            var data = new TheoryData<string, bool>();
            foreach (var language in Book.Languages)
            {
                data.Add(language, false);
                data.Add(language, true);
            }

            return data;
        }
    }

    public static TheoryData<string> Languages => [.. Book.Languages];

    /// <summary>In another alphabet a screen holds 70 letters instead of 160.</summary>
    [Theory]
    [MemberData(nameof(Alphabets))]
    public void EveryMessage_AtItsLongest_FitsScreensWithoutCuttingAWord(string language, bool inEthiopic)
    {
        var worst = new WorstCase(Book, Book.File(language));
        string Written(string text) => inEthiopic ? Ethiopic(text) : text;
        string Keys(int page, bool last) => Written(last ? "* back" : page == 0 ? "# more, * menu" : "# more, * back");

        Assert.All(Catalogue.All, message =>
        {
            var text = Written(worst.TextOf(message));

            var pages = Pager.Pages([text], Keys);

            Assert.All(pages, page => AssertFits(page.Text));
            var words = pages.SelectMany((page, i) =>
                Words(page.Text[..^Keys(i, i == pages.Count - 1).Length]));
            Assert.Equal(Words(text), words);
        });
    }

    [Theory]
    [MemberData(nameof(Languages))]
    public void EveryMenu_IsReachedAndFits(string language)
    {
        foreach (var view in Enum.GetValues<ScreenView>().Where(view => ScreenMenu.Of(view) is not null))
        {
            var talker = Joined(language);
            talker.Dial();
            talker.Farmer = talker.Farmer! with { Screen = talker.Farmer.Screen! with { View = view, Page = 0 } };

            ReadAll(talker.Enter(""));
        }
    }

    [Theory]
    [MemberData(nameof(Languages))]
    public void EveryMaterialMeasureAndAmount_CanBePickedAndFits(string language)
    {
        HashSet<string> picked = [];
        for (var role = 1; role <= StepByStep.Roles.Count; role++)
        {
            var materials = StepByStep.MaterialsOf(StepByStep.Roles[role - 1]);
            for (var material = 1; material <= materials.Count; material++)
            {
                var talker = Picking(language).Enter($"{role}");
                if (materials.Count > 1)
                {
                    if (material == 1) ReadAll(talker);
                    talker.Enter($"{material}");
                }

                AssertFits(talker.Screen.Text);
                talker.Enter("99*5");
                if (material == 1) ReadAll(talker);
                picked.Add(talker.Farmer!.Draft!.Items.Single().Material);
                var measure = 1 + (material % StepByStep.MeasuresOf(materials[material - 1]).Count);
                ReadAll(talker.Enter($"{measure}"));
                Assert.Equal(StepByStep.MeasuresOf(materials[material - 1])[measure - 1],
                    talker.Farmer!.Draft!.Items.Single().Measure);
            }
        }

        var all = MaterialTable.All.Where(material => material.Role != MaterialRole.Refused);
        Assert.Equal(all.Select(material => material.Key).ToHashSet(), picked);
    }

    [Theory]
    [MemberData(nameof(Languages))]
    public void EveryCrop_GetsItsAmountsAndFits(string language)
    {
        for (var crop = 1; crop <= AnswerReader.Known["crop"].Count; crop++)
        {
            var talker = Joined(language).Dial().Enter("7");
            ReadAll(talker);
            ReadAll(talker.Enter($"{crop}"));
            talker.Enter("999");
            if (talker.Farmer!.Stage == Stage.AskingWidth) talker.Enter("999");

            ReadAll(talker);
            Assert.NotEqual(Stage.AskingWidth, talker.Farmer!.Stage);
        }
    }

    private static void ReadAll(Talker talker)
    {
        var said = talker.Screen;
        AssertFits(said.Text);
        var language = talker.Farmer!.Language;
        var more = "\n" + Book.Say(language, Catalogue.ScreenMore, ("key", new Value.Name("#")));
        for (var page = 0; talker.Screen.Open && talker.Screen.Text.Contains(more, StringComparison.Ordinal); page++)
        {
            Assert.True(page < 40, said.Text);
            AssertFits(talker.Enter("#").Screen.Text);
        }
    }

    private static void AssertFits(string screen)
    {
        var fitting = Fit.Measure(screen);
        Assert.True(fitting.Units <= (fitting.Encoding == TextEncoding.Gsm7 ? 160 : 70), screen);
    }

    private static Talker Joined(string language)
    {
        var talker = new Talker(group: new Group(41, LongName, language, Talker.Zone, LongName)).Dial();
        ReadAll(talker);
        ReadAll(talker.Enter("41"));
        return talker.Enter("1");
    }

    private static Talker Picking(string language) => Joined(language).Enter("#");

    private static string[] Words(string text) => text.Split([' ', '\n'], StringSplitOptions.RemoveEmptyEntries);

    /// <summary>The text with each letter in the Ethiopic script, which takes UCS-2.</summary>
    private static string Ethiopic(string text) =>
        string.Concat(text.Select(c => char.IsLetter(c) ? (char)('\u1200' + (c % 64)) : c));
}
