using HeapText.Dialog.Text;
using NodaTime;

namespace HeapText.Dialog.Ports;

/// <summary>A way out to phones: one gateway connection.</summary>
public interface ICarrier
{
    /// <summary>Name of the line it serves.</summary>
    string Line { get; }

    /// <summary>How many segments a text takes on this line, which its rate and caps count.</summary>
    int Segments(string text) => Fit.Measure(text).Segments;

    /// <summary>Hands one message to the gateway.</summary>
    ValueTask<SendOutcome> Send(Outbound message, Msisdn to, CancellationToken cancel);
}

/// <summary>What the gateway said.</summary>
public abstract record SendOutcome
{
    private SendOutcome() { }

    /// <summary>It took the message.</summary>
    /// <param name="References">What it calls the message, one for each part it was sent in; null when it goes by our
    /// own id.</param>
    public sealed record Taken(IReadOnlyList<string>? References = null) : SendOutcome;

    /// <summary>It says that it is busy: leave the line alone, then try again under the same id.</summary>
    /// <param name="After">How long it asked to be left alone; null when it did not say.</param>
    public sealed record Busy(Duration? After) : SendOutcome;

    /// <summary>It failed, or its answer never came: try again under the same id.</summary>
    /// <param name="After">How long it asked to be left alone; null when it did not say.</param>
    /// <param name="LineBusy">True when the line seems out of reach, so that it is better left alone for a
    /// while.</param>
    public sealed record TryAgain(Duration? After, bool LineBusy = false) : SendOutcome;

    /// <summary>It refuses this message for good.</summary>
    public sealed record Refused(string Reason) : SendOutcome;
}
