using HeapText.Dialog.Ports;
using HeapText.Dialog.Text;
using NodaTime;

namespace HeapText.Simulator.Tests.Store;

/// <summary>A message that was sent, with what is known of its parts.</summary>
internal sealed class SentParts(Outbound message, string line, IReadOnlyList<string> references, Instant at)
{
    private readonly bool[] _delivered = new bool[references.Count];
    private DeliveryState? _state;
    private Instant? _stateAt;

    public string Id => message.Id;

    public Instant At { get; } = WholeSeconds(at);

    /// <summary>Applies a receipt for one part; false when it changed nothing.</summary>
    public bool Note(int part, DeliveryState state, Instant at)
    {
        if (_delivered[part]) return false;
        if (state != DeliveryState.Delivered)
        {
            if (_state is not null) return false;
            (_state, _stateAt) = (state, WholeSeconds(at));
            return true;
        }
        _delivered[part] = true;
        if (_delivered.All(one => one)) (_state, _stateAt) = (state, WholeSeconds(at));
        return true;
    }

    public SentMessage Whole() => new(
        message.Id, line, message.Priority, Fit.Measure(message.Text).Segments, At, references.Count,
        _delivered.Count(one => one), _state, _stateAt);

    private static Instant WholeSeconds(Instant moment) => Instant.FromUnixTimeSeconds(moment.ToUnixTimeSeconds());
}
