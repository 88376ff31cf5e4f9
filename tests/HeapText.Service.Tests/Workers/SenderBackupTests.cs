using HeapText.Dialog.Ports;
using HeapText.Service.Workers;
using NodaTime;

namespace HeapText.Service.Tests.Workers;

public sealed class SenderBackupTests : SendingTests
{
    private const string Lake = "lake";
    private const string Hill = "hill";
    private static readonly TimeSpan Step = TimeSpan.FromSeconds(1);
    private readonly NotingCarrier _lake;
    private readonly NotingCarrier _hill;

    public SenderBackupTests() => (_lake, _hill) = (new NotingCarrier(Lake, Time), new NotingCarrier(Hill, Time));

    [Fact]
    public async Task LineRefusesAsBusy_AfterAMinute_ItsMessagesGoOverTheBackup()
    {
        await Open();
        _lake.Answer = static _ => new SendOutcome.Busy(null);
        for (var i = 0; i < 5; i++) await Put(i, Lake);

        await RunFor(TimeSpan.FromSeconds(50), Step);
        Assert.Empty(_hill.Sent);
        await RunFor(TimeSpan.FromMinutes(3), Step);

        Assert.Equal(5, _hill.Sent.Select(one => one.Id).Distinct().Count());
        Assert.Equal(5, _hill.Sent.Count);
        Assert.Null(await Store.NextWake(Token));
        Assert.Contains(Logs.Lines, line => line.Contains("line hill sends for it", StringComparison.Ordinal));
    }

    [Fact]
    public async Task ReceiptOfAMessageTheBackupSent_ComesOnTheBackupsName()
    {
        await Open();
        _hill.Answer = static message => new SendOutcome.Taken([$"hill-{message.Id}"]);
        _lake.Answer = static _ => new SendOutcome.Busy(null);
        await Put(1, Lake);
        await RunFor(TimeSpan.FromMinutes(3), Step);

        var noted = await Store.Note(new Receipt(Hill, "hill-s1-1", DeliveryState.Delivered, Now), Now, Token);

        Assert.Equal(NoteOutcome.Noted, noted);
        Assert.True(Msisdn.TryParse("+999000000001", out var number));
        var sent = Assert.Single(await Store.Sent(Store.KeyOf(number), Token));
        Assert.Equal((Hill, DeliveryState.Delivered), (sent.Line, sent.State));
    }

    [Fact]
    public async Task OutcomeUnknown_StaysOnItsOwnLineUntilThatIsBack()
    {
        await Open();
        _lake.Answer = static _ => new SendOutcome.TryAgain(null, LineBusy: true);
        for (var i = 0; i < 3; i++) await Put(i, Lake);
        await RunFor(TimeSpan.FromMinutes(2), Step);
        for (var i = 3; i < 9; i++) await Put(i, Lake);

        await RunFor(TimeSpan.FromMinutes(30), Step);

        var bound = _lake.Sent.Select(one => one.Id).Distinct().ToList();
        Assert.Equal(["s0-1", "s1-1", "s2-1"], bound.Order());
        Assert.Equal(Enumerable.Range(3, 6).Select(i => $"s{i}-1"), _hill.Sent.Select(one => one.Id).Order());
        _lake.Answer = static _ => new SendOutcome.Taken();
        await RunFor(TimeSpan.FromMinutes(20), Step);
        await Put(20, Lake);
        await RunFor(TimeSpan.FromMinutes(1), Step);
        Assert.Equal(6, _hill.Sent.Count);
        Assert.Contains(_lake.Sent, one => one.Id == "s20-1");
        Assert.Null(await Store.NextWake(Token));
        Assert.Contains(Logs.Lines, line => line.Contains("sends for itself", StringComparison.Ordinal));
    }

    [Fact]
    public async Task LineAsksForAnHour_AfterAMinuteTheBackupSends()
    {
        await Open();
        _lake.Answer = static _ => new SendOutcome.Busy(Duration.FromHours(1));
        await Put(1, Lake);

        await RunFor(TimeSpan.FromMinutes(3), Step);

        Assert.Single(_lake.Sent);
        Assert.Single(_hill.Sent);
    }

    [Fact]
    public async Task OutcomeOnTheBackupUnknown_IsRepeatedThereUnderItsId()
    {
        await Open();
        _lake.Answer = static _ => new SendOutcome.Busy(null);
        _hill.Answer = static _ => new SendOutcome.TryAgain(null);
        await Put(1, Lake);
        await RunFor(TimeSpan.FromMinutes(3), Step);
        var tries = _lake.Sent.Count;
        (_lake.Answer, _hill.Answer) = (static _ => new SendOutcome.Taken(), static _ => new SendOutcome.Taken());

        await RunFor(TimeSpan.FromMinutes(20), Step);

        Assert.Equal(tries, _lake.Sent.Count);
        Assert.All(_hill.Sent, one => Assert.Equal("s1-1", one.Id));
        Assert.InRange(_hill.Sent.Count, 2, 10);
        Assert.Null(await Store.NextWake(Token));
    }

    [Fact]
    public async Task BackupSends_ChargesTheBackupsBudget()
    {
        await Open(hillRate: 2);
        _lake.Answer = static _ => new SendOutcome.Busy(null);
        for (var i = 0; i < 40; i++) await Put(i, Lake);

        await RunFor(TimeSpan.FromMinutes(3), Step);

        Assert.Equal(40, _hill.Sent.Count);
        Assert.All(_hill.Sent.GroupBy(one => one.At), second => Assert.InRange(second.Count(), 1, 2));
    }

    [Fact]
    public async Task BothLinesRest_NothingIsTakenUntilOneIsBack()
    {
        await Open();
        _lake.Answer = _hill.Answer = static _ => new SendOutcome.Busy(null);
        for (var i = 0; i < 5; i++) await Put(i, Lake);

        await RunFor(TimeSpan.FromHours(2), Step);
        _hill.Answer = static _ => new SendOutcome.Taken();
        _hill.Sent.Clear();
        await RunFor(TimeSpan.FromMinutes(20), Step);

        Assert.Equal(5, _hill.Sent.Count);
        Assert.Empty(await Store.SetAside(10, Token));
    }

    private async Task Open(double hillRate = 10)
    {
        await OpenStore();
        Sender(
            new OutboundRoute(_lake, Budget(Lake)), new OutboundRoute(_hill, Budget(Hill, hillRate)));
    }
}
