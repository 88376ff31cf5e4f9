using HeapText.Dialog.Ports;

namespace HeapText.Simulator.Tests.Rules;

/// <summary>What must hold of a message on its way.</summary>
internal sealed partial class RuleBook
{
    /// <summary>The service hands a message to the gateway.</summary>
    /// <param name="message">The message.</param>
    /// <param name="to">To whom.</param>
    /// <param name="takenAt">When it was taken from the store. [ticks since the start]</param>
    public void Sending(Outbound message, Msisdn to, long takenAt)
    {
        if (!_messages.TryGetValue(message.Id, out var made) || made.Message != message)
        {
            Break($"the gateway was handed {NameOf(message)}, which is no message that was made");
            return;
        }
        if (home.KeyOf(to) is var key && _farmers[key] != made.To) Break($"{made.Name} went to {NameOf(key)}");
        if (message.Priority == Priority.Reminder) CheckUnasked(made, takenAt);
    }

    private void CheckUnasked(MessageModel made, long takenAt)
    {
        var farmer = made.To;
        var local = Now.InZone(farmer.Zone);
        if (local.Hour is < FirstHour or > LastHour) Break($"{made.Name} was sent unasked at {local}");
        if (farmer.Record!.Stopped && farmer.StoppedAt < takenAt) Break($"{made.Name} was sent after STOP");
        // Sent again under its id it tells nothing new.
        if (made.HasArrived) return;
        var turned = made.Said.Heaps.Any(heap => farmer.Record.Heaps.Any(
            now => now.Number == heap.Number && now.LastTurned != heap.LastTurned));
        if (turned) Overtaken++;
    }

    /// <summary>The gateway has a message.</summary>
    public void Arrived(Outbound message, Msisdn to)
    {
        if (!_messages.TryGetValue(message.Id, out var made) || made.HasArrived) return;
        made.HasArrived = true;
        Messages++;
        foreach (var earlier in made.To.Messages)
        {
            if (earlier == made) return;
            if (earlier.HasArrived || earlier.Message.NotBefore > message.NotBefore) continue;
            if (home.SetAside.All(one => one.Message.Id != earlier.Message.Id))
                Break($"{made.Name} came to {NameOf(home.KeyOf(to))} before {earlier.Name}");
        }
    }
}
