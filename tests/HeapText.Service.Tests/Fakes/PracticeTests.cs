namespace HeapText.Service.Tests.Fakes;

/// <summary>Tests of one service in practice mode, with a data folder of its own.</summary>
public abstract class PracticeTests : IAsyncLifetime
{
    private readonly TempFolder _folder = new();

    private protected RunningService Service { get; private set; } = null!;

    public virtual async ValueTask InitializeAsync() => Service = await RunningService.Practice(_folder.Path);

    /// <summary>Ends the service and starts it again on the same folder.</summary>
    private protected async Task Restart(DateTimeOffset at)
    {
        await Service.DisposeAsync();
        Service = await RunningService.Practice(_folder.Path, at);
    }

    public virtual async ValueTask DisposeAsync()
    {
        await Service.DisposeAsync();
        _folder.Dispose();
        GC.SuppressFinalize(this);
    }
}
