using System.Text;
using System.Text.Json;
using System.Xml.Linq;
using CsCheck;
using HeapText.Carriers.Mapped;
using Microsoft.AspNetCore.WebUtilities;

namespace HeapText.Carriers.Tests.Mapped;

public sealed class TemplateTests
{
    private const int Runs = 2_000;

    private static readonly string[] Pieces =
    [
        "\"", "\\", "'", "\r\n", "\0", "\u0001", "<b>", "</b>", "<!--", "]]>", "&amp;", "{text}", "{\"a\":1}", "%00",
        "&to=1", "+", " ", "#", "\ud83c", "\udf3d", "🌽", "e\u0301", "\u202e", "\ufeff", "\uffff", "=1+1", "ጤና",
    ];

    private static readonly Gen<string> Hostile = Gen.OneOf(
        Gen.Char.Array[0, 60].Select(chars => new string(chars)),
        Gen.Int[0, Pieces.Length - 1].Array[0, 20].Select(picks => string.Concat(picks.Select(i => Pieces[i]))));

    [Fact]
    public void Fill_AnyValueInJson_ReadsBackTheSame() => Hostile.Sample(value =>
    {
        var filled = Template.Parse("""{"words":"{text}","more":["{text}"]}""").Fill(TextFormat.Json, _ => value);

        using var document = JsonDocument.Parse(filled);
        Assert.Equal(Whole(value), document.RootElement.GetProperty("words").GetString());
        Assert.Equal(Whole(value), document.RootElement.GetProperty("more")[0].GetString());
        Assert.Equal(2, document.RootElement.EnumerateObject().Count());
    }, iter: Runs);

    [Fact]
    public void Fill_AnyValueInXml_ReadsBackTheSame() => Hostile.Sample(value =>
    {
        var filled = Template.Parse("""<a said="{text}"><b>{text}</b></a>""").Fill(TextFormat.Xml, _ => value);

        var document = XDocument.Parse(filled, LoadOptions.PreserveWhitespace).Root!;
        Assert.Equal(OfXml(value), document.Attribute("said")!.Value);
        Assert.Equal(OfXml(value), document.Element("b")!.Value);
        Assert.Empty(document.Element("b")!.Elements());
    }, iter: Runs);

    [Fact]
    public void Fill_AnyValueInAForm_ReadsBackTheSame() => Hostile.Sample(value =>
    {
        var filled = Template.Parse("words={text}&to={to}").Fill(TextFormat.Form, _ => value);

        var fields = QueryHelpers.ParseQuery(filled);
        Assert.Equal(2, fields.Count);
        Assert.Equal(Whole(value), fields["words"].Single());
        Assert.Equal(Whole(value), fields["to"].Single());
        Assert.DoesNotContain(filled, c => c is '\r' or '\n' or > '~' or ' ');
    }, iter: Runs);

    [Fact]
    public void Fill_TenThousandCharacters_ReadsBackTheSameInEachFormat()
    {
        var value = string.Concat(Enumerable.Repeat("<\"&🌽\n\\", 10_000 / 7 + 1));

        Assert.Equal(value, JsonSerializer.Deserialize<string>(
            Template.Parse("\"{text}\"").Fill(TextFormat.Json, _ => value)));
        Assert.Equal(value, XDocument.Parse(
            Template.Parse("<a>{text}</a>").Fill(TextFormat.Xml, _ => value)).Root!.Value);
        Assert.Equal(value, QueryHelpers.ParseQuery(
            Template.Parse("a={text}").Fill(TextFormat.Form, _ => value))["a"].Single());
    }

    [Fact]
    public void Fill_BracesAroundNoName_StandForThemselves()
    {
        var filled = Template.Parse("{\"a\":{}, \"b\":\"{Text} {} { text } {text}\"}").Fill(TextFormat.Json, _ => "x");

        Assert.Equal("{\"a\":{}, \"b\":\"{Text} {} { text } x\"}", filled);
    }

    [Theory]
    [InlineData(TextFormat.Json, """{"words":"{text}","parts":{segments},"half":"{segments}"}""")]
    [InlineData(TextFormat.Json, "")]
    [InlineData(TextFormat.Json, "\"{text}\"")]
    [InlineData(TextFormat.Xml, """<?xml version="1.0"?><a n="{to}">{text}<b/></a>""")]
    [InlineData(TextFormat.Xml, "")]
    [InlineData(TextFormat.Form, "words={text}&to={to}&parts={segments}")]
    [InlineData(TextFormat.Plain, "{text}, {to}")]
    public void FaultOf_ValuesWhereTheyBelong_IsNone(TextFormat format, string body) =>
        Assert.Null(FaultOf(format, body));

    [Theory]
    [InlineData(TextFormat.Json, """{"words":{text}}""")]
    [InlineData(TextFormat.Json, """{"{text}":1}""")]
    [InlineData(TextFormat.Json, """{"words":"{text}",}""")]
    [InlineData(TextFormat.Json, """{"words":"{text}" """)]
    [InlineData(TextFormat.Json, "{text}")]
    [InlineData(TextFormat.Xml, "<{text}/>")]
    [InlineData(TextFormat.Xml, "<a><!-- {text} --></a>")]
    [InlineData(TextFormat.Xml, "<a><![CDATA[{text}]]></a>")]
    [InlineData(TextFormat.Xml, "<a {text}=\"1\"/>")]
    [InlineData(TextFormat.Xml, "<a>{text}")]
    [InlineData(TextFormat.Xml, "{text}")]
    [InlineData(TextFormat.Form, "{text}=1")]
    [InlineData(TextFormat.Form, "{text}")]
    [InlineData(TextFormat.Plain, "{words}")]
    [InlineData(TextFormat.Json, """{"words":"{secret}"}""")]
    public void FaultOf_ValuesWhereTheyDoNotBelong_SaysWhatToWrite(TextFormat format, string body) =>
        Assert.NotNull(FaultOf(format, body));

    [Theory]
    [InlineData("application/json", TextFormat.Json)]
    [InlineData("application/vnd.bell+json; charset=UTF-8", TextFormat.Json)]
    [InlineData("text/xml; charset=\"utf-8\"", TextFormat.Xml)]
    [InlineData("application/soap+xml", TextFormat.Xml)]
    [InlineData("application/x-www-form-urlencoded", TextFormat.Form)]
    [InlineData("text/plain", TextFormat.Plain)]
    [InlineData("text/html", null)]
    [InlineData("text/plain; charset=iso-8859-1", null)]
    [InlineData("json", null)]
    public void Of_ContentType_TellsTheEscape(string contentType, TextFormat? expected) =>
        Assert.Equal(expected, TextFormats.Of(contentType));

    private static string? FaultOf(TextFormat format, string body) =>
        TemplateCheck.FaultOf(Template.Parse(body), format, ["text", "to", "segments"]);

    private static string Whole(string value) => Encoding.UTF8.GetString(Encoding.UTF8.GetBytes(value));

    // XML 1.0, section 2.2: these characters cannot stand in a document at all.
    private static string OfXml(string value) => string.Concat(Whole(value).Select(c =>
        c is '\t' or '\n' or '\r' or >= ' ' and not ('\uFFFE' or '\uFFFF') ? c : '\uFFFD'));
}
