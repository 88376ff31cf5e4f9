using HeapText.Carriers.Smpp;
using HeapText.Carriers.Smpp.Wire;
using HeapText.Service.Startup;
using Microsoft.Extensions.Configuration;

namespace HeapText.Service.Tests.Startup;

public sealed class SmppSettingsReaderTests
{
    [Fact]
    public void Read_LeastSettings_AreASealedLineOfUsualBounds()
    {
        var line = Read();

        Assert.Equal(("shore", "3344", "smsc.example", 3550), (line.Name, line.From, line.Host, line.Port));
        Assert.True(line.Tls);
        Assert.Equal((10, LongTexts.Headers, true), (line.Window, line.LongTexts, line.Receipts));
        Assert.Equal(TimeSpan.FromSeconds(30), line.EnquireEvery);
    }

    [Theory]
    [InlineData("127.0.0.1")]
    [InlineData("::1")]
    [InlineData("localhost")]
    public void Read_HostOnThisMachine_IsNotSealed(string host)
    {
        var line = Read(("Host", host));

        Assert.Equal((false, 2775), (line.Tls, line.Port));
    }

    [Fact]
    public void Read_EverySetting_IsTaken()
    {
        var line = Read(
            ("Port", "2776"), ("Tls", "false"), ("TlsName", "centre.example"), ("Password", "secret"),
            ("SystemType", "sms"), ("SourceTon", "5"), ("SourceNpi", "0"), ("ServiceType", "CMT"),
            ("Alphabet", "latin1"), ("LongTexts", "sar"), ("Validity", "absolute"), ("Window", "1000"),
            ("EnquireEvery", "00:01:00"), ("EnquireTimeout", "00:00:05"), ("ResponseTimeout", "00:00:20"),
            ("ReceiptIds", "decimal"), ("Receipts", "false"), ("ReconnectFirst", "00:00:02"),
            ("ReconnectLongest", "00:05:00"));

        Assert.Equal((2776, false, "centre.example", "secret"), (line.Port, line.Tls, line.TlsName, line.Password));
        Assert.Equal(("sms", (byte?)5, (byte?)0, "CMT"),
            (line.SystemType, line.SourceTon, line.SourceNpi, line.ServiceType));
        Assert.Equal((Alphabet.Latin1, LongTexts.Sar, SmppTimeForm.Absolute, 1000),
            (line.Alphabet, line.LongTexts, line.Validity, line.Window));
        Assert.Equal((60, 5, 20), (line.EnquireEvery.TotalSeconds, line.EnquireTimeout.TotalSeconds,
            line.ResponseTimeout.TotalSeconds));
        Assert.Equal((ReceiptIds.InDecimal, false, 2, 300), (line.ReceiptIds, line.Receipts,
            line.ReconnectFirst.TotalSeconds, line.ReconnectLongest.TotalSeconds));
        Assert.DoesNotContain("secret", line.ToString(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("Host", "")]
    [InlineData("Host", "no host")]
    [InlineData("Port", "0")]
    [InlineData("Tls", "perhaps")]
    [InlineData("SystemId", "")]
    [InlineData("SystemId", "longer-than-fifteen")]
    [InlineData("Password", "ninechars")]
    [InlineData("SourceTon", "7")]
    [InlineData("Alphabet", "morse")]
    [InlineData("LongTexts", "never")]
    [InlineData("Window", "1001")]
    [InlineData("EnquireEvery", "1")]
    [InlineData("ResponseTimeout", "00:00:26")]
    [InlineData("ReceiptIds", "octal")]
    [InlineData("ReconnectLongest", "00:00:00.5")]
    [InlineData("Url", "https://gateway.example")]
    public void Read_BadSetting_IsNamedWithItsFix(string key, string value)
    {
        var fault = Assert.Throws<SettingsFaultsException>(() => Read((key, value)));

        var told = Assert.Single(fault.Faults);
        Assert.StartsWith($"Lines:shore:{key}", told, StringComparison.Ordinal);
        Assert.DoesNotContain("ninechars", told, StringComparison.Ordinal);
    }

    private static SmppLineOptions Read(params (string Key, string Value)[] more)
    {
        Dictionary<string, string?> settings = new()
        {
            ["Store:Secret"] = Convert.ToBase64String(new byte[32]),
            ["Lines:shore:Form"] = "smpp",
            ["Lines:shore:From"] = "3344",
            ["Lines:shore:Host"] = "smsc.example",
            ["Lines:shore:SystemId"] = "heap",
        };
        foreach (var (key, value) in more) settings["Lines:shore:" + key] = value;
        var read = SettingsReader.Read(new ConfigurationBuilder().AddInMemoryCollection(settings).Build(), false);
        return Assert.IsType<SmppLineOptions>(Assert.Single(read.Lines));
    }
}
