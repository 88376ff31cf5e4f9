using System.Net;
using System.Net.Http.Headers;
using System.Security.Cryptography;
using System.Text;
using System.Xml.Linq;
using HeapText.Dialog.Ports;
using HeapText.Service.Tests.Fakes;

namespace HeapText.Service.Tests.Hooks;

/// <summary>XML both ways, screens marked in the body.</summary>
public sealed class MappedXmlTests() : MappedTests("xml.json")
{
    [Fact]
    public async Task Texts_InOneRequest_AreEachAnsweredByASignedPush()
    {
        GatewayAnswers("""<bag><slip state="in"><part number="r-1"/></slip></bag>""");

        using var answer = await Send("/sms/pine", """
            <p:bag xmlns:p="urn:pine"><p:slip number="1"><p:sender>+256700000001</p:sender>
            <p:message>&lt;hot&gt; &amp; "dry" 🌽</p:message></p:slip></p:bag>
            """);
        var sent = Assert.Single(await Sent(1));

        Assert.Equal("""<thanks slips="1"/>""", Words(answer.Content));
        var slip = XDocument.Parse(sent.Body!).Root!.Element("slip")!;
        Assert.Equal("Heard: <hot> & \"dry\" 🌽", slip.Element("message")!.Value);
        Assert.Equal("+256700000001", slip.Element("reader")!.Value);
        Assert.Equal("2026-03-04T06:00:00Z", slip.Attribute("until")!.Value);
        var time = sent.Headers!["X-Pine-Time"].Single();
        var seal = HMACSHA512.HashData(
            Convert.FromBase64String("cmVwbGFjZS10aGlzLXBpbmUtc2lnbmluZy1rZXk="),
            Encoding.UTF8.GetBytes($"POST\n/bag\n{time}\n{sent.Body}"));
        Assert.Equal(Convert.ToBase64String(seal), sent.Headers["X-Pine-Seal"].Single());
    }

    [Fact]
    public async Task Screen_IsMarkedInTheBody()
    {
        using var open = await Dial(1, "1 &amp; 2");
        using var closed = await Dial(2, "END");

        Assert.Equal("application/xml", open.Content.Headers.ContentType!.ToString());
        Assert.Equal("""<page visit="v&quot;1" after="1" ask="yes">1: 1 &amp; 2</page>""", Words(open.Content));
        Assert.Equal("""<page visit="v&quot;1" after="2" ask="no">2: END</page>""", Words(closed.Content));
    }

    [Fact]
    public async Task Screen_WithATextBesides_ShowsTheReceiptOfTheText()
    {
        GatewayAnswers("""<bag><slip state="in"><part number="r-1"/></slip></bag>""");
        using var screen = await Dial(1, "SMS");
        await Outcomes(RunningService.RealNumber, 1);

        using var receipt = await Send("/receipts/pine", """
            <bag><outcome number="r-1" time="2026-03-02T09:05:00+03:00"><word>Arrived</word></outcome></bag>
            """);

        Assert.Equal(HttpStatusCode.OK, receipt.StatusCode);
        Assert.Equal(DeliveryState.Delivered, Assert.Single(await Outcomes(RunningService.RealNumber, 1)).State);
    }

    [Theory]
    [InlineData("""<bag><slip state="out"/></bag>""")]
    [InlineData("""<bag><slip state="OUT"/></bag>""")]
    public async Task Text_RefusedInTheBody_IsNotSentAgain(string refusal)
    {
        GatewayAnswers(refusal);
        using var screen = await Dial(1, "SMS");
        await Sent(1);

        for (var i = 0; i < 20; i++)
        {
            Service.Time.Advance(TimeSpan.FromSeconds(30));
            await Task.Delay(TimeSpan.FromMilliseconds(10), TimeProvider.System, Token);
        }

        Assert.Single(Gateway.LogEntries);
    }

    [Fact]
    public async Task Text_GatewayBusyInTheBody_IsSentAgainUnderTheSameId()
    {
        GatewayAnswers("""<bag><slip state="later"/></bag>""");
        using var screen = await Dial(1, "SMS");

        var sent = await Sent(3, TimeSpan.FromMilliseconds(200));

        Assert.Single(sent.Select(one => XDocument.Parse(one.Body!).Root!.Element("slip")!.Attribute("number")!.Value)
            .Distinct());
    }

    [Theory]
    [InlineData("""<!DOCTYPE bag [<!ENTITY e SYSTEM "file:///etc/hostname">]><bag><slip>&e;</slip></bag>""")]
    [InlineData("<bag><slip></bag>")]
    [InlineData("")]
    public async Task Text_InBrokenOrDangerousXml_IsRefused(string body)
    {
        using var answer = await Send("/sms/pine", body);

        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Equal("Each: the body is not well-formed XML without a document type.", await answer.Detail());
    }

    [Fact]
    public async Task Text_WithLastSeasonsToken_IsStillTaken()
    {
        using var old = await Post("/sms/pine", "<bag/>", "text/xml",
            headers => headers.Authorization = new AuthenticationHeaderValue("Bearer", "last-season-pine-token"));
        using var wrong = await Post("/sms/pine", "<bag/>", "text/xml",
            headers => headers.Authorization = new AuthenticationHeaderValue("Bearer", "older-pine-token"));

        Assert.Equal(HttpStatusCode.OK, old.StatusCode);
        Assert.Equal(HttpStatusCode.Unauthorized, wrong.StatusCode);
    }

    private Task<HttpResponseMessage> Dial(int place, string entry) => Send("/ussd/pine",
        $"""<visit number='v"1'><sender>+256700000001</sender><entry place="{place}">{entry}</entry></visit>""");

    private Task<HttpResponseMessage> Send(string path, string body) => Post(path, body, "application/xml",
        headers => headers.Authorization = new AuthenticationHeaderValue("Bearer", "replace-this-pine-token"));
}
