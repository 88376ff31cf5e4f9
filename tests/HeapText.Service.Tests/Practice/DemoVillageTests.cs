using HeapText.Dialog.Ports;
using HeapText.Service.Practice;
using HeapText.Service.Tests.Fakes;
using Microsoft.Extensions.DependencyInjection;

namespace HeapText.Service.Tests.Practice;

public sealed class DemoVillageTests : PracticeTests
{
    [Fact]
    public async Task Seed_EmptyStore_PutsTheThreeGroups()
    {
        await Village.Seed(withFarmers: false, Token);

        var groups = await Service.Store.Groups(Token);
        Assert.Equal([(41, "Upper Ziwani"), (42, "Lower Ziwani"), (43, "Kitalo Ridge")],
            groups.Select(g => (g.Code, g.Name)));
        Assert.All(groups, group => Assert.Equal("Trainer, Marula Flats", group.Officer));
    }

    [Fact]
    public async Task Seed_Texts_PlaysThemAtTheirTimesWithWhatFallsDueBetween()
    {
        await Village.Seed(Script((20, "08:30", "HEAP"), (2, "18:00", "TURNED"), (0, "23:00", "not yet")), true, Token);

        var played = (await Service.Messages()).Select(message =>
            (message.GetProperty("text").GetString(), message.GetProperty("at").GetDateTimeOffset()));
        Assert.Equal(
            [
                ("Heard: HEAP", new(2026, 2, 10, 5, 30, 0, TimeSpan.Zero)),
                ("Reminder", new(2026, 2, 11, 4, 0, 0, TimeSpan.Zero)),
                ("Heard: TURNED", new(2026, 2, 28, 15, 0, 0, TimeSpan.Zero)),
                ("Reminder", new DateTimeOffset(2026, 3, 1, 4, 0, 0, TimeSpan.Zero)),
            ],
            played);
        Assert.Equal(RunningService.Start, Service.Services.GetRequiredService<PracticeClock>().GetUtcNow());
    }

    [Fact]
    public async Task Seed_WithFarmers_HearsFromEveryPhoneOfTheVillages()
    {
        await Village.Seed(withFarmers: true, Token);

        // At 09:00 in the village two of the 24 have still to join.
        var expected = Enumerable.Range(1, 24).Except([1, 15]).Select(i => $"+999100000{i:00}");
        Assert.Equal(expected, await Phones());
    }

    [Fact]
    public async Task Seed_StoreThatHoldsRecords_IsLeftAsItIs()
    {
        await Service.Text("1", "HEAP");

        await Village.Seed(withFarmers: true, Token);

        Assert.Empty(await Service.Store.Groups(Token));
    }

    [Fact]
    public async Task Seed_CutShort_IsRemembered()
    {
        var journal = Service.Services.GetRequiredService<PracticeJournal>();
        Service.Store.IsFull = true;

        await Assert.ThrowsAsync<StoreUnavailableException>(() => Village.Seed(withFarmers: true, Token));
        Assert.True(await journal.IsSeeding());

        await Restart(RunningService.Start);
        Assert.True(await Service.Services.GetRequiredService<PracticeJournal>().IsSeeding());
    }

    [Fact]
    public async Task Seed_Whole_LeavesNoMark()
    {
        await Village.Seed(withFarmers: false, Token);

        Assert.False(await Service.Services.GetRequiredService<PracticeJournal>().IsSeeding());
    }

    [Fact]
    public async Task Send_RepeatedUnderTheSameId_IsKeptOnce()
    {
        var journal = Service.Services.GetRequiredService<PracticeJournal>();
        var message = new PracticeMessage(
            0, "out", RunningService.Number, "s-1", "Karibu", "GSM7", 1, NodaTime.Instant.FromUnixTimeSeconds(0));

        await journal.Keep(message);
        await journal.Keep(message with { Text = "again" });

        Assert.Equal("Karibu", (await Service.Messages()).Single().GetProperty("text").GetString());
    }

    private async Task<List<string>> Phones()
    {
        var phones = new List<string>();
        foreach (var phone in Enumerable.Range(1, 30).Select(i => $"+999100000{i:00}"))
            if ((await Service.Messages(phone)).Count > 0) phones.Add(phone);
        return phones;
    }

    private DemoVillage Village => Service.Services.GetRequiredService<DemoVillage>();

    private static List<DemoScript> Script(params (int Day, string At, string Text)[] texts) =>
    [
        new()
        {
            Code = 41,
            Name = "Upper Ziwani",
            Language = "sw",
            Zone = "Africa/Nairobi",
            Texts = [.. texts.Reverse().Select(one => new DemoText
            {
                Phone = RunningService.Number, Day = one.Day, At = one.At, Text = one.Text,
            })],
        },
    ];
}
