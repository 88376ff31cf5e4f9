using HeapText.Dialog.Engine;
using HeapText.Dialog.Ports;
using HeapText.Service.Tests.Fakes;
using HeapText.Service.Workers;
using Microsoft.Extensions.DependencyInjection;

namespace HeapText.Service.Tests.Workers;

public sealed class DueWorkerTests : IAsyncLifetime
{
    private readonly TempFolder _folder = new();
    private RunningService _service = null!;

    public async ValueTask InitializeAsync() => _service = await RunningService.Practice(_folder.Path);

    public async ValueTask DisposeAsync()
    {
        await _service.DisposeAsync();
        _folder.Dispose();
    }

    [Fact]
    public async Task RunOnce_OnePoisonAmongMany_OthersAreRemindedAndItIsHandedOverAfterFiveTries()
    {
        await _service.Text("1", "POISON DUE");
        for (var i = 10; i < 40; i++) await _service.Text("1", "HEAP", $"+999100000{i}");

        await _service.Advance("P3D");

        var others = await Task.WhenAll(Enumerable.Range(10, 30).Select(i => _service.Messages($"+999100000{i}")));
        Assert.All(others, messages => Assert.Equal("Reminder", messages[^1].GetProperty("text").GetString()));
        Assert.Equal(30 + 5, _service.Conversation.Woken);
        Assert.Equal(ConcernReason.ServiceFault, (await _service.Store.Concerns(10, Token)).Single().Concern.Reason);
        Assert.Null(await _service.Store.NextWake(Token));
    }

    [Fact]
    public async Task RunOnce_StoreGoneWhileDue_RemindsOnceItIsBack()
    {
        await _service.Text("1", "HEAP");
        await _service.WaitForMessages(1);
        var due = _service.Services.GetRequiredService<DueWorker>();
        _service.Time.Advance(TimeSpan.FromDays(1));
        _service.Store.IsGone = true;
        await Assert.ThrowsAsync<StoreUnavailableException>(() => due.RunOnce(Token));
        _service.Store.IsGone = false;

        await _service.Advance("PT1M");

        Assert.Equal(2, (await _service.Messages()).Count);
    }

    [Fact]
    public async Task RunOnce_AnotherTurnComesFirst_BeginsAgain()
    {
        await _service.Text("1", "HEAP");
        await _service.WaitForMessages(1);
        _service.Store.Conflicts = 3;

        await _service.Advance("P1D");

        Assert.Equal(2, (await _service.Messages()).Count);
    }
}
