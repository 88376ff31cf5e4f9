namespace HeapText.Carriers.Smpp;

/// <summary>What bounds one connection.</summary>
/// <param name="Window">The most requests that wait for their answer at once.</param>
/// <param name="ResponseTimeout">How long a request waits for its answer.</param>
/// <param name="EnquireEvery">How often the peer is asked whether it is there.</param>
/// <param name="EnquireTimeout">How long it may take to say so.</param>
internal sealed record SessionLimits(
    int Window, TimeSpan ResponseTimeout, TimeSpan EnquireEvery, TimeSpan EnquireTimeout)
{
    /// <summary>As a line's settings say.</summary>
    public static SessionLimits Of(SmppLineOptions line) =>
        new(line.Window, line.ResponseTimeout, line.EnquireEvery, line.EnquireTimeout);
}
