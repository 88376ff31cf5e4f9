using HeapText.Dialog.Ports;
using HeapText.Store.Records;
using NodaTime;

namespace HeapText.Simulator.Tests.Store;

/// <summary>The outbox and what was sent.</summary>
internal sealed partial class MemoryStore
{
    public ValueTask<IReadOnlyList<Sending>> TakeNext(
        string line, Priority through, Instant now, Duration lease, int most, CancellationToken cancel)
    {
        cancel.ThrowIfCancellationRequested();
        lock (home.Lock)
        {
            var at = Millis.Now(now);
            var first = flaw == Flaw.LosesOrder ? ^1 : 0;
            return new([.. home.Farmers.Where(farmer => farmer.Outbox.Count > 0)
                .Select(farmer => (Farmer: farmer, First: farmer.Outbox[first]))
                .Where(one => one.First.Message.Line == line && one.First.Message.Priority <= through)
                .Where(one => one.First.Ready <= at)
                .OrderBy(one => one.First.Message.Priority).ThenBy(one => one.First.Ready)
                .ThenBy(one => one.First.Sequence).Take(most).ToList()
                .Select(one => Take(one.Farmer, one.First, now + lease))]);
        }
    }

    private Sending Take(MemoryFarmer farmer, Waiting waiting, Instant until)
    {
        waiting.Tries++;
        waiting.Ready = flaw == Flaw.ForgetsTaken ? long.MaxValue : Millis.Until(until);
        if (flaw == Flaw.RenamesRetries && waiting.Tries > 1)
            waiting.Message = waiting.Message with { Id = waiting.Message.Id + "0" };
        return new Sending(farmer.Key, farmer.Number, waiting.Message, waiting.Tries);
    }

    public ValueTask Settle(Sending sending, Settlement settlement, CancellationToken cancel)
    {
        cancel.ThrowIfCancellationRequested();
        lock (home.Lock)
        {
            var farmer = home.Find(sending.Key);
            var waiting = farmer?.Outbox.Find(one => one.Message.Id == sending.Message.Id && one.Tries > 0);
            if (waiting is null || (settlement is not Settlement.Sent && waiting.Tries != sending.Attempt))
                return ValueTask.CompletedTask;
            if (settlement is Settlement.Retry retry)
            {
                waiting.Ready = Millis.Until(retry.At);
                return ValueTask.CompletedTask;
            }
            if (settlement is Settlement.PutBack back)
            {
                waiting.Ready = Millis.Until(back.At);
                waiting.Tries--;
                return ValueTask.CompletedTask;
            }
            farmer!.Outbox.Remove(waiting);
            if (settlement is Settlement.Sent sent) Log(farmer, waiting.Message, sent);
            if (settlement is Settlement.SetAside aside)
                home.SetAside.Add(new(farmer.Key, farmer.Number, Now(), aside.Reason, waiting.Message));
            return ValueTask.CompletedTask;
        }
    }

    private void Log(MemoryFarmer farmer, Outbound message, Settlement.Sent sent)
    {
        var (at, line) = (Now(), sent.Over ?? message.Line);
        IReadOnlyList<string> references = sent.References.Count > 0 ? sent.References : [message.Id];
        var parts = new SentParts(message, line, references, at);
        for (var part = 0; part < references.Count; part++)
        {
            var mark = (line, references[part]);
            home.References[mark] = new ReferencedPart(parts, part, at, farmer);
            if (home.Early.TryGetValue(mark, out var early) && at <= early.At + SentMessage.EarlyKept)
                parts.Note(part, early.Receipt.State, early.Receipt.At);
        }
        farmer.Sent.Add(parts);
        if (farmer.Sent.Count > SentMessage.KeptOfFarmer) farmer.Sent.RemoveAt(0);
    }

    public ValueTask<NoteOutcome> Note(Receipt receipt, Instant now, CancellationToken cancel)
    {
        cancel.ThrowIfCancellationRequested();
        lock (home.Lock)
        {
            var mark = (receipt.Line, receipt.Reference);
            if (!home.References.TryGetValue(mark, out var known) || now > known.At + SentMessage.ReferencesKept)
            {
                if (receipt.State == DeliveryState.Delivered || !home.Early.ContainsKey(mark))
                    home.Early[mark] = (receipt, now);
                return new(NoteOutcome.Early);
            }
            return new(known.Of.Sent.Contains(known.Sent) && known.Sent.Note(known.Part, receipt.State, receipt.At)
                ? NoteOutcome.Noted
                : NoteOutcome.Unchanged);
        }
    }

    public ValueTask<IReadOnlyList<SentMessage>> Sent(FarmerKey key, CancellationToken cancel)
    {
        lock (home.Lock)
        {
            var oldest = Now() - SentMessage.Kept;
            return new([.. (home.Find(key)?.Sent ?? []).Where(one => one.At >= oldest)
                .Select(one => one.Whole()).Reverse()]);
        }
    }

    public ValueTask<IReadOnlyList<SetAsideMessage>> SetAside(int most, CancellationToken cancel)
    {
        lock (home.Lock) return new([.. Enumerable.Reverse(home.SetAside).Take(most)]);
    }

    private static bool WasHeld(Waiting first) =>
        first.Tries > 0 || first.Ready != Millis.Until(first.Message.NotBefore);

    public ValueTask GiveBack(string line, Instant now, Duration later, CancellationToken cancel)
    {
        cancel.ThrowIfCancellationRequested();
        lock (home.Lock)
        {
            var latest = Millis.Until(now + later);
            foreach (var first in home.Farmers.Select(farmer => farmer.Outbox.FirstOrDefault()).OfType<Waiting>())
                if (first.Message.Line == line && WasHeld(first) && first.Ready > latest && flaw != Flaw.ForgetsTaken)
                    first.Ready = Math.Max(
                        Millis.Now(now), first.Tries > 0 ? 0 : Millis.Until(first.Message.NotBefore));
            return ValueTask.CompletedTask;
        }
    }
}
