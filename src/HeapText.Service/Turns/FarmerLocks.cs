using HeapText.Dialog.Ports;

namespace HeapText.Service.Turns;

/// <summary>Lets one turn at a time through for a farmer in this process.</summary>
/// <remarks>Striped: two farmers may share a stripe, which costs them a wait and nothing else.</remarks>
internal sealed class FarmerLocks
{
    private const int Stripes = 4096;
    private readonly SemaphoreSlim[] _stripes;

    public FarmerLocks()
    {
        _stripes = new SemaphoreSlim[Stripes];
        for (var i = 0; i < Stripes; i++) _stripes[i] = new SemaphoreSlim(1, 1);
    }

    /// <summary>Waits for the farmer's turn; dispose the result to end it.</summary>
    public async ValueTask<IDisposable> Enter(FarmerKey farmer, CancellationToken cancel)
    {
        var stripe = _stripes[Convert.ToInt32(farmer.Hash[..4], 16) % Stripes];
        await stripe.WaitAsync(cancel);
        return new Turn(stripe);
    }

    private sealed class Turn(SemaphoreSlim stripe) : IDisposable
    {
        public void Dispose() => stripe.Release();
    }
}
