using System.Globalization;
using System.Text.Json;
using CsCheck;
using HeapText.Dialog.Text;

namespace HeapText.Dialog.Tests.Text;

public sealed class FitTests
{
    private static readonly string Folder = Path.Combine(AppContext.BaseDirectory, "Text");

    /// <summary>Counted by hand in the copy, so that a vector that is lost is missed.</summary>
    [Fact]
    public void Vectors_InTheCopy_AreAllThere() => Assert.Equal(31, Vectors().Count);

    public static TheoryData<string> VectorNames() => [.. Vectors().Keys];

    [Theory]
    [MemberData(nameof(VectorNames))]
    public void Measure_ReferenceText_CountsExactly(string name)
    {
        var vector = Vectors()[name];
        var units = vector.GetProperty("units").GetInt32();

        var fitting = Fit.Measure(vector.GetProperty("text").GetString() ?? new string('A', units));

        Assert.Equal(vector.GetProperty("encoding").GetString(), fitting.EncodingName);
        Assert.Equal(units, fitting.Units);
        Assert.Equal(vector.GetProperty("segments").GetInt32(), fitting.Segments);
        if (vector.GetProperty("segment_units") is { ValueKind: JsonValueKind.Array } expected)
            Assert.Equal(expected.EnumerateArray().Select(n => n.GetInt32()), fitting.SegmentUnits);
    }

    [Fact]
    public void Cost_EveryUtf16Unit_AgreesWithTheAlphabetTable()
    {
        // 3GPP TS 23.038 section 6.2.1, as a table of its own.
        var table = File.ReadLines(Path.Combine(Folder, "gsm7.csv")).Skip(1).Select(line => line.Split(','))
            .Where(row => row[3].Length > 0 && row[3] != "U+001B")
            .ToDictionary(row => (char)Convert.ToInt32(row[3][2..], 16), row => row[2]);

        var wrong = Enumerable.Range(0, 0x10000).Select(n => (char)n).Where(c =>
            Gsm7.Cost(c).ToString(CultureInfo.InvariantCulture) != table.GetValueOrDefault(c, "0"));

        Assert.Empty(wrong);
    }

    [Theory]
    [InlineData("", 1)]
    [InlineData("AAAA", 1)]
    public void Measure_ShortText_TakesOneScreen(string text, int pages) =>
        Assert.Equal(pages, Fit.Measure(text).UssdPages);

    [Fact]
    public void Measure_TextOver160Septets_TakesTwoScreens() =>
        Assert.Equal((1, 2, 3), (Pages(160, 'A'), Pages(161, 'A'), Pages(321, 'A')));

    [Fact]
    public void Measure_WideTextOver70Units_TakesTwoScreens() =>
        Assert.Equal((1, 2), (Pages(70, 'ọ'), Pages(71, 'ọ')));

    [Fact]
    public void Split_AnyText_JoinsBackAndDividesNoPair() =>
        Gen.String[Gen.Char["aé€^ọ\n\ud83c\udf3d"], 0, 700].Sample(text =>
    {
        var pieces = Fit.Split(text);

        Assert.Equal(text, string.Concat(pieces));
        Assert.Equal(Fit.Measure(text).Segments, pieces.Count);
        for (var i = 1; i < pieces.Count; i++)
            Assert.False(char.IsHighSurrogate(pieces[i - 1][^1]) && char.IsLowSurrogate(pieces[i][0]));
    }, iter: 500);

    /// <summary>Each segment holds what it says it holds, and the next character would not have gone in.</summary>
    [Fact]
    public void Split_AnyText_FillsItsSegmentsAndDividesNoEscape() =>
        Gen.String[Gen.Char["aé€^[\n"], 0, 700].Sample(text =>
    {
        var fitting = Fit.Measure(text);
        var pieces = Fit.Split(text);

        Assert.Equal(fitting.Units, fitting.SegmentUnits.Sum());
        Assert.Equal(fitting.SegmentUnits, pieces.Select(piece => piece.Sum(Gsm7.Cost)));
        var capacity = pieces.Count == 1 ? 160 : 153;
        Assert.All(fitting.SegmentUnits, units => Assert.InRange(units, 0, capacity));
        for (var i = 1; i < pieces.Count; i++)
            Assert.True(fitting.SegmentUnits[i - 1] + Gsm7.Cost(pieces[i][0]) > capacity);
    }, iter: 500);

    [Fact]
    public void Split_AnyWideText_FillsItsSegments() =>
        Gen.String[Gen.Char["aọ\ud83c\udf3d"], 1, 400].Where(text => text.Contains('ọ')).Sample(text =>
    {
        var fitting = Fit.Measure(text);

        Assert.Equal(text.Length, fitting.Units);
        Assert.Equal(text.Length, fitting.SegmentUnits.Sum());
        Assert.Equal(fitting.SegmentUnits, Fit.Split(text).Select(piece => piece.Length));
        Assert.All(fitting.SegmentUnits, units => Assert.InRange(units, 0, fitting.Segments == 1 ? 70 : 67));
    }, iter: 500);

    [Fact]
    public void SplitWide_TextOfTheSmallAlphabet_TakesTheWideSegments()
    {
        Assert.Equal([70], Fit.SplitWide(new string('a', 70)).Select(piece => piece.Length));
        Assert.Equal([67, 4], Fit.SplitWide(new string('a', 71)).Select(piece => piece.Length));
    }

    private static int Pages(int length, char character) => Fit.Measure(new string(character, length)).UssdPages;

    private static Dictionary<string, JsonElement> Vectors()
    {
        using var file = File.OpenRead(Path.Combine(Folder, "segment-vectors.json"));
        return JsonDocument.Parse(file).RootElement.GetProperty("vectors").EnumerateArray()
            .ToDictionary(v => v.GetProperty("name").GetString()!, v => v.Clone());
    }
}
