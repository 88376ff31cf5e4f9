using HeapText.Dialog.Ports;
using StackExchange.Redis;

namespace HeapText.Store.Redis;

/// <summary>Turns what a server or its connection can do to us into the one fault the port knows.</summary>
/// <remarks>
/// A step whose time was up may still reach the server later. A caller who tries again then finds its effect: a
/// commit gives a duplicate or a conflict, settling does nothing, what was claimed or taken comes again when its
/// lease ends; only an audit entry may stand twice.
/// </remarks>
internal static class Guard
{
    /// <summary>Waits for a step.</summary>
    /// <exception cref="StoreUnavailableException">The server is gone, stalled, full or refuses.</exception>
    public static async ValueTask<T> Do<T>(Func<Task<T>> step, CancellationToken cancel)
    {
        cancel.ThrowIfCancellationRequested();
        try
        {
            return await step().WaitAsync(StepLimit.Time, cancel).ConfigureAwait(false);
        }
        catch (RedisServerException e) when (!IsOurs(e))
        {
            throw new StoreUnavailableException($"The store's server refuses: {e.Message}", e);
        }
        catch (Exception e) when (e is RedisConnectionException or TimeoutException or ObjectDisposedException)
        {
            throw new StoreUnavailableException("The store's server is gone or stalled.", e);
        }
    }

    // Servers before 7 wrap what a script met: "ERR Error running script …: -OOM command not allowed …".
    private static readonly string[] WrappedTroubles = ["-OOM ", "-READONLY ", "-MISCONF "];

    /// <summary>Whether the server says that we asked for nonsense.</summary>
    private static bool IsOurs(RedisServerException fault) =>
        fault.Message.StartsWith("WRONGTYPE", StringComparison.Ordinal)
        || (fault.Message.StartsWith("ERR", StringComparison.Ordinal)
            && !WrappedTroubles.Any(trouble => fault.Message.Contains(trouble, StringComparison.Ordinal)));
}
