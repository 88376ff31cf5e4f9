using CsCheck;
using HeapText.Dialog.Screens;
using HeapText.Dialog.Text;

namespace HeapText.Dialog.Tests.Screens;

public sealed class PagerTests
{
    private static readonly Func<int, bool, string> Keys = (page, last) =>
        string.Join(", ", new[] { last ? "" : "# more", page > 0 ? "* back" : "" }.Where(key => key.Length > 0));

    private static readonly Gen<string[]> Texts = Gen.OneOf(
        Gen.String[Gen.Char["abcdefgh .,?1\n"], 0, 500], Gen.String[Gen.Char["ሀለሐመሠ ።፣12"], 0, 200],
        Gen.String[Gen.Char["{}[]~^ ab"], 0, 300], Gen.String[0, 300]).Array[0, 6];

    /// <summary>3GPP TS 23.038 gives a USSD string 160 octets: 182 septets, of which 160 are used here, or 80 UCS-2
    /// units, of which 70 are used.</summary>
    [Fact]
    public void Pages_AnyTexts_FitAScreenAndSayEverythingInOrder() => Texts.Sample(texts =>
    {
        var pages = Pager.Pages(texts, Keys);

        Assert.All(pages, page => Assert.Equal(1, Fit.Measure(page.Text).UssdPages));
        var said = pages.Select((page, i) => WithoutKeys(page.Text, Keys(i, i == pages.Count - 1)));
        Assert.Equal(Letters(string.Concat(texts)), Letters(string.Concat(said)));
    }, iter: 2_000);

    [Fact]
    public void Pages_TextThatFitsAPageOfItsOwn_IsNotCut()
    {
        var first = new string('a', 100);
        var question = "How is it? 1 hot, 2 warm, 3 cool, 4 cold. " + new string('b', 60);

        var pages = Pager.Pages([first, question], Keys);

        Assert.Equal([$"{first}\n# more", $"{question}\n* back"], pages.Select(page => page.Text));
        Assert.Equal([0, 1], pages.Select(page => page.Last));
    }

    [Fact]
    public void Pages_LongList_IsCutAfterAChoice()
    {
        var list = "Which? " + string.Join(", ", Enumerable.Range(1, 22).Select(i => $"{i} dry maize stalks"));

        var pages = Pager.Pages([list], Keys);

        Assert.All(pages.SkipLast(1), page => Assert.Matches(@"stalks,\n# more", page.Text));
        Assert.All(pages.Skip(1), page => Assert.Matches(@"^\d+ dry maize stalks", page.Text));
    }

    [Theory]
    [InlineData('w', 140)]
    [InlineData('\u1200', 54)]
    public void Pages_WordLongerThanAScreen_IsCutToFit(char letter, int atLeast)
    {
        var pages = Pager.Pages([new string(letter, 400)], Keys);

        Assert.All(pages.SkipLast(1), page => Assert.True(page.Text.Count(c => c == letter) >= atLeast));
        Assert.Equal(400, pages.Sum(page => page.Text.Count(c => c == letter)));
    }

    private static string WithoutKeys(string page, string keys)
    {
        Assert.EndsWith(keys, page, StringComparison.Ordinal);
        return page[..^keys.Length];
    }

    private static string Letters(string text) => string.Concat(text.Where(c => !char.IsWhiteSpace(c)));
}
