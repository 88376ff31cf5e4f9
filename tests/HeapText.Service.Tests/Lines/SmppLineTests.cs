using System.Net;
using HeapText.Carriers.Tests.Smpp;
using HeapText.Service.Tests.Fakes;

namespace HeapText.Service.Tests.Lines;

/// <summary>The whole service with an SMPP line to a message centre in a process of its own.</summary>
public sealed class SmppLineTests
{
    [Fact]
    public async Task Text_DeliveredByTheCentre_IsAnsweredOverTheSameLine()
    {
        using var folder = new TempFolder();
        await using var peer = await PeerProcess.Start("{}");
        await using var service = await RunningService.Real(folder.Path, settings:
        [
            new("Lines:shore:Form", "smpp"), new("Lines:shore:From", "3344"), new("Lines:shore:Host", "127.0.0.1"),
            new("Lines:shore:Port", peer.Port.ToString(Invariant)), new("Lines:shore:SystemId", "heap"),
        ]);
        await Until(peer, "bound");

        Assert.Equal(0, await peer.Deliver(RunningService.RealNumber[1..], "HEAP 41"));
        await Until(peer, "taken");

        var answer = Assert.Single((await peer.Report()).Taken);
        Assert.Equal(RunningService.RealNumber[1..], answer.GetProperty("to").GetString());
        Assert.Equal("Heard: HEAP 41", answer.GetProperty("text").GetString());
        using var hook = await service.Post("{}", "/sms/shore");
        Assert.Equal(HttpStatusCode.NotFound, hook.StatusCode);
    }

    private static async Task Until(PeerProcess peer, string count)
    {
        while ((await peer.Report()).Counts.GetProperty(count).GetInt32() == 0)
            await Task.Delay(TimeSpan.FromMilliseconds(20), TimeProvider.System, Token);
    }
}
