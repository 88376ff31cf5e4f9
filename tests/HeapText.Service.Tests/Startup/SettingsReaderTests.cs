using HeapText.Carriers.Native;
using HeapText.Service.Startup;
using Microsoft.Extensions.Configuration;

namespace HeapText.Service.Tests.Startup;

public sealed class SettingsReaderTests
{
    private const string Secret = "whsec_aGVhcHRleHQtc2lnbmluZy10ZXN0LWtleS0wMQ==";
    private static readonly string StoreSecret = Convert.ToBase64String(new byte[32]);

    [Fact]
    public void Read_NoSettings_IsPracticeModeOnThisMachineOnly()
    {
        var settings = Read([]);

        Assert.True(settings.IsPractice);
        Assert.Equal(["http://127.0.0.1:5080"], settings.Urls);
        Assert.Equal("", settings.Store.Connection);
        Assert.Equal(Path.GetFullPath("data"), settings.Store.DataDirectory);
    }

    [Fact]
    public void Read_CapsOfTheDay_AreOfTheLineAndOfAllLines()
    {
        var settings = Read(
        [
            .. Line(("SegmentsPerDay", "500"), ("SegmentsPerSecond", "2.5")),
            new("Spend:SegmentsPerDay", "800"), new("Spend:Zone", "Africa/Nairobi"),
        ]);

        var budget = settings.Spend.BudgetOf(settings.Lines.Single());
        Assert.Equal(("lake", 2.5, 500L, 800L), (
            budget.Line, budget.SegmentsPerSecond, budget.SegmentsPerDay, budget.SegmentsPerDayOfAll));
        Assert.Equal("Africa/Nairobi", budget.Zone.Id);
    }

    [Fact]
    public void Read_ALine_IsRealMode()
    {
        var settings = Read(Line(("Timeout", "00:00:07"), ("Region", "ke")));

        Assert.False(settings.IsPractice);
        var line = Assert.IsType<NativeLineOptions>(settings.Lines.Single());
        Assert.Equal("lake", line.Name);
        Assert.Equal(new Uri("https://gateway.example/send"), line.Url);
        Assert.Equal(TimeSpan.FromSeconds(7), line.Timeout);
        Assert.Equal("KE", line.Region);
        Assert.Single(line.Keys);
    }

    [Fact]
    public void Read_WhatEveryLineMaySay_ReachesTheLine()
    {
        var line = Read(Line(("Countries", "ke, UG"), ("AllowedFrom", "192.0.2.7 2001:db8::/32"),
            ("SegmentsPerSecond", "0.5"), ("SegmentsPerDay", "2000"))).Lines.Single();

        Assert.Equal(["KE", "UG"], line.Countries.Order(StringComparer.Ordinal));
        Assert.Equal(["192.0.2.7/32", "2001:db8::/32"], line.AllowedFrom.Select(network => network.ToString()));
        Assert.Equal((0.5, 2000L), (line.SegmentsPerSecond, line.SegmentsPerDay));
    }

    [Fact]
    public void Read_MethodOfAGroup_ReachesTheConversation()
    {
        var settings = Read([new("Groups:41:Name", "Upper Ziwani"), new("Groups:41:Zone", "Africa/Nairobi"),
            new("Groups:41:Officer", "Trainer"), new("Groups:41:Method", "slow-heap"), new("AmbientC", "31.5")]);

        Assert.Equal("slow-heap", settings.Office().MethodOfGroup(41));
        Assert.Equal("daily-then-weekly", settings.Office().MethodOfGroup(42));
        Assert.Equal(31.5, settings.Office().AmbientC);
    }

    [Fact]
    public void Read_DistrictOfAGroup_ReachesTheConversation()
    {
        var settings = Read([new("Groups:41:Name", "Upper Ziwani"), new("Groups:41:Zone", "Africa/Nairobi"),
            new("Groups:41:Officer", "Trainer"), new("Groups:41:District", "Ziwani")]);

        Assert.Equal(("Ziwani", "42"), (settings.Office().DistrictOf(41), settings.Office().DistrictOf(42)));
    }

    [Fact]
    public void Read_DistrictAndPrices_ReachTheConversation()
    {
        var settings = Read([new("Materials:rice-straw:BucketKg", "2"), new("Prices:urea", "90"),
            new("Prices:Currency", "KES")]);

        Assert.Equal(100, settings.Office().District.For("rice-straw").DensityKgPerM3);
        Assert.Equal(90, settings.Office().Prices.PerKg["urea"]);
    }

    [Theory]
    [InlineData("Groups:41:Method", "magic")]
    [InlineData("Groups:41:District", "a district by a name that is far too long")]
    [InlineData("AmbientC", "hot")]
    [InlineData("AmbientC", "46")]
    public void Read_MethodOrAirTemperatureWrong_IsNamed(string key, string value)
    {
        var faults = Assert.Throws<SettingsFaultsException>(() => Read([new("Groups:41:Name", "Upper Ziwani"),
            new("Groups:41:Zone", "Africa/Nairobi"), new("Groups:41:Officer", "Trainer"), new(key, value)]));

        Assert.Contains(key, Assert.Single(faults.Faults), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("Lines:lake:Url", "")]
    [InlineData("Lines:lake:Url", "gateway")]
    [InlineData("Lines:lake:Url", "http://gateway.example/send")]
    [InlineData("Lines:lake:Url", "ftp://gateway.example/send")]
    [InlineData("Lines:lake:Secrets:0", "secret")]
    [InlineData("Lines:lake:Secrets:2", Secret)]
    [InlineData("Lines:lake:From", "")]
    [InlineData("Lines:lake:From", "12345678901234567")]
    [InlineData("Lines:lake:Region", "XX")]
    [InlineData("Lines:lake:Timeout", "ten")]
    [InlineData("Lines:lake:Timeout", "00:00:00")]
    [InlineData("Lines:lake:Timeout", "00:00:26")]
    [InlineData("Lines:lake:Colour", "green")]
    [InlineData("Lines:lake:Form", "pigeon")]
    [InlineData("Lines:lake:Countries", "KE XX")]
    [InlineData("Lines:lake:AllowedFrom", "192.0.2.300")]
    [InlineData("Lines:lake:SegmentsPerSecond", "0")]
    [InlineData("Lines:lake:SegmentsPerSecond", "fast")]
    [InlineData("Lines:lake:SegmentsPerDay", "-1")]
    [InlineData("Lines:lake:Backup", "lake")]
    [InlineData("Lines:lake:Backup", "hill")]
    [InlineData("Proxies", "proxy.example")]
    [InlineData("Lines:practice:Url", "https://gateway.example")]
    [InlineData("Lines:Lake One:Url", "https://gateway.example")]
    [InlineData("Store:Secret", "")]
    [InlineData("Store:Secret", "c2hvcnQ=")]
    [InlineData("Store:Secret", "no base64")]
    [InlineData("Store:RequireDurableServer", "maybe")]
    [InlineData("Store:Conection", "x")]
    [InlineData("Urls", "here")]
    [InlineData("Urls", ";")]
    [InlineData("Urls", "http://127.0.0.1:1/base")]
    [InlineData("Urls", "http://127.0.0.1:1?x=1")]
    [InlineData("Urls", "https://127.0.0.1:1")]
    [InlineData("Lines", "lake")]
    [InlineData("Groups", "41")]
    [InlineData("Spend:SegmentsPerDay", "many")]
    [InlineData("Spend:SegmentsPerDay", "0")]
    [InlineData("Spend:Zone", "Upper Ziwani")]
    [InlineData("Urls", "http://127.0.0.1:1;ftp://127.0.0.1:2")]
    public void Read_OneBadSetting_NamesItWithItsFix(string key, string value)
    {
        var fault = Assert.Throws<SettingsFaultsException>(() => Read([.. Line(), new(key, value), .. Others(key)]));

        var section = key.StartsWith("Lines:", StringComparison.Ordinal) ? string.Join(':', key.Split(':')[..2]) : key;
        Assert.All(fault.Faults, line => Assert.StartsWith(section, line, StringComparison.Ordinal));
        Assert.All(fault.Faults, line => Assert.Matches(@"[.:;] .+\.$|openssl", line));
    }

    [Theory]
    [InlineData("KE, UG", "KE", true)]
    [InlineData("", "KE", true)]
    [InlineData("KE", "KE, UG", false)]
    [InlineData("KE", "", false)]
    public void Read_BackupForFewerCountries_IsRefused(string own, string backups, bool isRefused)
    {
        KeyValuePair<string, string?>[] settings =
        [
            .. Line(("Backup", "hill"), ("Countries", own)), new("Lines:hill:Url", "https://gateway.example"),
            new("Lines:hill:From", "101"), new("Lines:hill:Secrets:0", Secret), new("Lines:hill:Countries", backups),
        ];

        if (!isRefused) Assert.Equal(2, Read(settings).Lines.Count);
        else
            Assert.StartsWith("Lines:lake:Backup names hill, whose Countries",
                Assert.Throws<SettingsFaultsException>(() => Read(settings)).Faults.Single(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("Line:lake:Url", "Line")]
    [InlineData("Data", "Data")]
    [InlineData("Store__Connection", "Store__Connection")]
    public void Read_NoSuchSection_IsRefusedRatherThanPracticedWith(string key, string named)
    {
        var fault = Assert.Throws<SettingsFaultsException>(() => Read([new(key, "x")]));

        Assert.StartsWith($"{named} is not a setting: use one of", fault.Faults.Single(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("Logging:LogLevel:Default", "Debug")]
    [InlineData("AllowedHosts", "heaptext.example")]
    [InlineData("Kestrel:Certificates:Default:Path", "heaptext.pfx")]
    [InlineData("urls", "http://127.0.0.1:7000")]
    public void Read_SettingOfTheHost_IsTaken(string key, string value)
    {
        Assert.True(Read([new(key, value)]).IsPractice);
    }

    [Fact]
    public void Read_AddressBesideUrls_IsRefused()
    {
        var fault = Assert.Throws<SettingsFaultsException>(() =>
            Read([new("Kestrel:Endpoints:Http:Url", "http://0.0.0.0:80")]));

        Assert.StartsWith("Kestrel:Endpoints ", fault.Faults.Single(), StringComparison.Ordinal);
    }

    [Fact]
    public void Read_HttpsWithACertificate_IsTaken()
    {
        var settings = Read(
            [new("Urls", "https://127.0.0.1:1"), new("Kestrel:Certificates:Default:Path", "heaptext.pfx")]);

        Assert.Equal(["https://127.0.0.1:1"], settings.Urls);
    }

    [Fact]
    public void Read_ManyBadSettings_NamesThemAllAtOnce()
    {
        var fault = Assert.Throws<SettingsFaultsException>(() => Read(
        [
            new("Lines:lake:Timeout", "ten"), new("Lines:hill:Url", "x"), new("Urls", "here"), new("Store:Foo", "1"),
        ]));

        string[] expected =
        [
            "Lines:lake:Url", "Lines:lake:Secrets", "Lines:lake:From", "Lines:lake:Timeout", "Lines:hill:Url",
            "Lines:hill:Secrets", "Lines:hill:From", "Urls", "Store:Foo", "Store:Secret",
        ];
        Assert.Equal(expected.Order(), fault.Faults.Select(line => line.Split(' ')[0].TrimEnd(':')).Order());
    }

    [Theory]
    [InlineData("http://0.0.0.0:5080")]
    [InlineData("http://*:5080")]
    [InlineData("http://192.168.1.7:5080")]
    [InlineData("http://farm.example")]
    public void Read_PracticeModeReachableFromElsewhere_IsRefused(string url)
    {
        var fault = Assert.Throws<SettingsFaultsException>(() => Read([new("Urls", url)]));

        Assert.Contains("Lines", fault.Faults.Single(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("http://localhost:7000")]
    [InlineData("http://[::1]:7000")]
    [InlineData("http://127.0.0.1:0")]
    public void Read_PracticeModeOnThisMachine_IsTaken(string url)
    {
        Assert.Equal([url], Read([new("Urls", url)]).Urls);
    }

    [Fact]
    public void Read_FreshWithARealLine_IsRefused()
    {
        var fault = Assert.Throws<SettingsFaultsException>(() => Read(Line(), fresh: true));

        Assert.StartsWith("--fresh", fault.Faults.Single(), StringComparison.Ordinal);
    }

    private static Settings Read(IEnumerable<KeyValuePair<string, string?>> settings, bool fresh = false) =>
        SettingsReader.Read(
            new ConfigurationBuilder()
                .AddInMemoryCollection(settings.GroupBy(one => one.Key).Select(same => same.Last())).Build(),
            fresh);

    private static KeyValuePair<string, string?>[] Line(params (string Key, string Value)[] more) =>
    [
        new("Lines:lake:Url", "https://gateway.example/send"), new("Lines:lake:From", "4040"),
        new("Lines:lake:Secrets:0", Secret), new("Store:Secret", StoreSecret),
        .. more.Select(pair => new KeyValuePair<string, string?>("Lines:lake:" + pair.Key, pair.Value)),
    ];

    // What a setting needs beside it to be the only bad one.
    private static KeyValuePair<string, string?>[] Others(string key) => key switch
    {
        "Lines:lake:Secrets:2" => [new("Lines:lake:Secrets:1", Secret)],
        "Lines:practice:Url" => [new("Lines:practice:From", "1"), new("Lines:practice:Secrets:0", Secret)],
        "Lines:Lake One:Url" => [new("Lines:Lake One:From", "1"), new("Lines:Lake One:Secrets:0", Secret)],
        _ => [],
    };
}
