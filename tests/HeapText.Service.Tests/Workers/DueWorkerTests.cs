using HeapText.Dialog.Engine;
using HeapText.Dialog.Ports;
using HeapText.Service.Tests.Fakes;
using HeapText.Service.Workers;
using Microsoft.Extensions.DependencyInjection;

namespace HeapText.Service.Tests.Workers;

public sealed class DueWorkerTests : PracticeTests
{
    [Fact]
    public async Task RunOnce_OnePoisonAmongMany_OthersAreRemindedAndItIsHandedOverAfterFiveTries()
    {
        await Service.Text("1", "POISON DUE");
        for (var i = 10; i < 40; i++) await Service.Text("1", "HEAP", $"+999100000{i}");

        await Service.Advance("P3D");

        var others = await Task.WhenAll(Enumerable.Range(10, 30).Select(i => Service.Messages($"+999100000{i}")));
        Assert.All(others, messages => Assert.Equal("Reminder", messages[^1].GetProperty("text").GetString()));
        Assert.Equal(30 + 5, Service.Conversation.Woken);
        Assert.Equal(ConcernReason.ServiceFault, (await Service.Store.Concerns(10, Token)).Single().Concern.Reason);
        Assert.Null(await Service.Store.NextWake(Token));
    }

    [Fact]
    public async Task RunOnce_StoreGoneWhileDue_RemindsOnceItIsBack()
    {
        await Service.Text("1", "HEAP");
        await Service.WaitForMessages(1);
        var due = Service.Services.GetRequiredService<DueWorker>();
        Service.Time.Advance(TimeSpan.FromDays(1));
        Service.Store.IsGone = true;
        await Assert.ThrowsAsync<StoreUnavailableException>(() => due.RunOnce(Token));
        Service.Store.IsGone = false;

        await Service.Advance("PT1M");

        Assert.Equal(2, (await Service.Messages()).Count);
    }

    [Fact]
    public async Task RunOnce_AnotherTurnComesFirst_BeginsAgain()
    {
        await Service.Text("1", "HEAP");
        await Service.WaitForMessages(1);
        Service.Store.Conflicts = 3;

        await Service.Advance("P1D");

        Assert.Equal(2, (await Service.Messages()).Count);
    }
}
