using System.Text;
using CsCheck;
using HeapText.Carriers.Mapped;
using Microsoft.AspNetCore.Http;

namespace HeapText.Carriers.Tests.Mapped;

public sealed class FieldSourceTests
{
    private const string Letter = """{"letter":{"from":"A","count":7,"hot":true,"none":null,"tags":["x","y"]}}""";
    private const string Slip = """
        <?xml version="1.0"?><b:bag xmlns:b="urn:bag" xmlns="urn:slip"><slip number="7"><sender>A</sender>
        <part>x</part><part>y</part><message><![CDATA[<1> & 2]]></message></slip></b:bag>
        """;

    [Theory]
    [InlineData("json:/letter/from", Letter, "A")]
    [InlineData("json:/letter/count", Letter, "7")]
    [InlineData("json:/letter/hot", Letter, "true")]
    [InlineData("json:/letter/tags", Letter, "x,y")]
    [InlineData("json:/letter/tags/1", Letter, "y")]
    [InlineData("json:", "\"whole\"", "whole")]
    [InlineData("form:words", "caller=1&words=a+b%26c", "a b&c")]
    [InlineData("form:words", "words=", "")]
    [InlineData("query:said", "", "hot & dry")]
    [InlineData("header:x-step", "", "3")]
    [InlineData("xml:/bag/slip/sender", Slip, "A")]
    [InlineData("xml:/bag/slip/@number", Slip, "7")]
    [InlineData("xml:/bag/slip/part", Slip, "x,y")]
    [InlineData("xml:/bag/slip/message", Slip, "<1> & 2")]
    [InlineData("body:", " kept 17 \n", "kept 17")]
    [InlineData("body:kept *", "kept 17", "17")]
    [InlineData("body:number * on", "number 17 on top", "17")]
    [InlineData("text:always", "", "always")]
    [InlineData("json:/letter/missing | json:/letter/from", Letter, "A")]
    [InlineData("json:/letter/none | text:fallback | json:", Letter, null)]
    [InlineData("json:/letter/none | text:a | b", Letter, "a | b")]
    public void Read_FieldInItsPlace_IsFound(string places, string body, string? expected)
    {
        if (expected is null)
        {
            Assert.Null(Field.Parse("Text", places, out _));
            return;
        }

        var found = Assert.IsType<FieldValue.Found>(Read(places, body));

        Assert.Equal(expected, string.Join(',', found.Values));
    }

    [Theory]
    [InlineData("json:/letter/nobody", Letter)]
    [InlineData("json:/letter/none", Letter)]
    [InlineData("json:/letter/tags/2", Letter)]
    [InlineData("json:/letter/tags/01", Letter)]
    [InlineData("json:/letter/tags/-", Letter)]
    [InlineData("form:words", "caller=1")]
    [InlineData("query:nothing", "")]
    [InlineData("header:X-Nothing", "")]
    [InlineData("xml:/bag/slip/nobody", Slip)]
    [InlineData("xml:/slip", Slip)]
    [InlineData("body:lost *", "kept 17")]
    public void Read_NothingInThePlace_IsMissing(string places, string body) =>
        Assert.IsType<FieldValue.Missing>(Read(places, body));

    [Theory]
    [InlineData("json:/letter", Letter)]
    [InlineData("json:/a", """{"a":1,"a":2}""")]
    [InlineData("json:/a", """{"a":"\ud800"}""")]
    [InlineData("json:/a", """{"\ud800":1,"a":""")]
    [InlineData("json:/a", "not json")]
    [InlineData("json:/a", "")]
    [InlineData("form:words", "words=1&words=2")]
    [InlineData("query:twice", "")]
    [InlineData("header:X-Twice", "")]
    [InlineData("xml:/a", "<a><b></a>")]
    [InlineData("xml:/a", "")]
    [InlineData("xml:/a", """<!DOCTYPE a [<!ENTITY e SYSTEM "file:///etc/passwd">]><a>&e;</a>""")]
    [InlineData("xml:/a", """<!DOCTYPE a [<!ENTITY e "eeee"><!ENTITY f "&e;&e;">]><a>&f;</a>""")]
    [InlineData("xml:/a", "<a>&#0;</a>")]
    public void Read_WhatIsNotOneWholeValue_IsBroken(string places, string body) =>
        Assert.IsType<FieldValue.Broken>(Read(places, body));

    [Fact]
    public void Read_BodyNestedWithoutEnd_IsBrokenWithoutACrash()
    {
        Assert.IsType<FieldValue.Broken>(Read("json:/a", string.Concat(Enumerable.Repeat("[", 60_000))));
        Assert.IsType<FieldValue.Broken>(Read("xml:/a", string.Concat(Enumerable.Repeat("<a>", 20_000))));
        var deep = string.Concat(Enumerable.Repeat("<a>", 9_000)) + string.Concat(Enumerable.Repeat("</a>", 9_000));
        Assert.IsType<FieldValue.Found>(Read("xml:/a", deep));
    }

    [Fact]
    public void Read_AnyBytesInAnyPlace_NeverFails()
    {
        string[] places = ["json:/a/0", "xml:/a/b", "xml:/a/@b", "form:a", "query:a", "body:a*b"];
        Field[] fields = [.. places.Select(Parse)];
        Place[] lists = [Place.Parse("json:/a", out _)!, Place.Parse("xml:/a/b", out _)!];
        string[] texts =
        [
            "{", "}", "[", "]", "\"a\"", ":", ",", "\"\\ud800\"", "\"\\ud800\":1,", "<a>", "</a>", "<b ", "b='", "'>",
            "&#xD800;", "&lt;", "<!DOCTYPE a>", "<![CDATA[", "]]>", "a=", "%", "%ff", "&", "+", "\0", "\uFEFF",
            "<?xml version='1.0'?>", "1e999",
        ];
        byte[][] pieces =
            [.. texts.Select(Encoding.UTF8.GetBytes), [0xFF, 0xFE], [0xC0, 0x80], [0xED, 0xA0, 0x80]];

        Gen.Int[0, pieces.Length - 1].Array[0, 30].Sample(picks =>
        {
            var body = picks.SelectMany(i => pieces[i]).ToArray();
            var query = Encoding.Latin1.GetString(body);
            var source = new FieldSource(_ => query, query, body);
            foreach (var field in fields) source.Read(field);
            foreach (var list in lists)
                foreach (var item in source.Items(list, out _) ?? [])
                    foreach (var field in fields) item.Read(field);
        }, iter: 5_000);
    }

    [Theory]
    [InlineData("""{"\ud800":1,"a":2}""")]
    [InlineData("""{"a":{"\ud800":1},"b":2}""")]
    public void Read_BesideANameOfHalfACharacter_NeverFails(string body)
    {
        Assert.IsNotType<FieldValue.Missing>(Read("json:/a", body));
        Read("json:/a/\ud800", body);
    }

    [Fact]
    public void Read_JsonAfterAByteOrderMark_IsFound() =>
        Assert.IsType<FieldValue.Found>(Read("json:/a", "\uFEFF{\"a\":1}"));

    [Fact]
    public void Read_BytesThatAreNoUtf8_AreBroken()
    {
        var source = new FieldSource(_ => default, "", new byte[] { (byte)'a', (byte)'=', 0xC3, 0x28 });

        Assert.IsType<FieldValue.Broken>(source.Read(Parse("form:a")));
        Assert.IsType<FieldValue.Broken>(source.Read(Parse("body:")));
    }

    /// <summary>The example of RFC 6901, section 5.</summary>
    [Theory]
    [InlineData("/foo/0", "bar")]
    [InlineData("/", "0")]
    [InlineData("/a~1b", "1")]
    [InlineData("/c%d", "2")]
    [InlineData("/e^f", "3")]
    [InlineData("/g|h", "4")]
    [InlineData("/i\\j", "5")]
    [InlineData("/k\"l", "6")]
    [InlineData("/ ", "7")]
    [InlineData("/m~0n", "8")]
    public void Read_PointersOfTheStandard_FindItsValues(string place, string expected)
    {
        const string document = """
            {"foo":["bar","baz"],"":0,"a/b":1,"c%d":2,"e^f":3,"g|h":4,"i\\j":5,"k\"l":6," ":7,"m~n":8}
            """;

        Assert.Equal([expected], Assert.IsType<FieldValue.Found>(Read("json:" + place, document)).Values);
    }

    [Theory]
    [InlineData("sender")]
    [InlineData("")]
    [InlineData("jsn:/a")]
    [InlineData("json:a")]
    [InlineData("json:/a~2")]
    [InlineData("json:/a\n~")]
    [InlineData("xml:bag")]
    [InlineData("xml:/bag//slip")]
    [InlineData("xml:/bag/*")]
    [InlineData("xml:/bag[1]")]
    [InlineData("xml:/@")]
    [InlineData("form:")]
    [InlineData("query:")]
    [InlineData("header:X Sender")]
    [InlineData("header:X:\r\nY")]
    [InlineData("body:* and *")]
    [InlineData("hash:sha")]
    public void Parse_WhatIsNoPlace_SaysWhatToWrite(string text)
    {
        Assert.Null(Field.Parse("From", text, out var fault));
        Assert.NotEqual("", fault);
    }

    [Fact]
    public void Items_ListOfMessages_AreReadEachFromItself()
    {
        var request = Request("""{"letters":[{"from":"A"},{"from":"B"},"C"]}""");
        Assert.NotNull(Place.Parse("json:/letters", out _));

        var items = FieldSource.Of(request).Items(Place.Parse("json:/letters", out _), out _)!;

        Assert.Equal(3, items.Count);
        Assert.Equal(["B"], Assert.IsType<FieldValue.Found>(items[1].Read(Parse("json:/from"))).Values);
        Assert.IsType<FieldValue.Missing>(items[2].Read(Parse("json:/from")));
        Assert.Equal(["3"], Assert.IsType<FieldValue.Found>(items[2].Read(Parse("header:X-Step"))).Values);
    }

    [Theory]
    [InlineData("json:/letters", """{"letters":{}}""")]
    [InlineData("json:/letters", "{}")]
    [InlineData("json:/letters", "<")]
    [InlineData("xml:/bag", "{")]
    public void Items_NoList_SaysSo(string place, string body)
    {
        Assert.Null(FieldSource.Of(Request(body)).Items(Place.Parse(place, out _), out var fault));
        Assert.NotEqual("", fault);
    }

    private static FieldValue Read(string places, string body) => FieldSource.Of(Request(body)).Read(Parse(places));

    private static Field Parse(string places) => Field.Parse("Text", places, out var fault)
        ?? throw new InvalidOperationException(fault);

    private static HookRequest Request(string body)
    {
        var headers = new HeaderDictionary { ["X-Step"] = "3", ["X-Twice"] = new(["1", "2"]) };
        return new HookRequest("POST", "/sms/lake", "said=hot+%26%20dry&twice=1&twice=2", headers,
            Encoding.UTF8.GetBytes(body));
    }
}
