using HeapText.Dialog.Ports;
using NodaTime;

namespace HeapText.Simulator.Tests.Rules;

/// <summary>What must hold of a turn.</summary>
internal sealed partial class RuleBook
{
    private const int FirstHour = 6;
    private const int LastHour = 18;

    /// <summary>Answers that go round in a circle end after so many.</summary>
    private const int MostRepeats = 3;

    /// <summary>Texts that say nothing which asks for an answer.</summary>
    private static readonly string[] Nods = ["yes", "1", "no", "2", ""];

    private readonly Dictionary<(FarmerKey From, string Session, int Step), (Screen Screen, Instant At)> _shown = [];

    private void CheckReminder(FarmerModel farmer, Commit commit)
    {
        if (commit.Seen is not null || commit.Send.Count == 0) return;
        if (farmer.Record is not { Stopped: false, Group: not null } before)
        {
            Break($"{farmer.Name} was reminded without being joined");
            return;
        }
        var local = commit.At.InZone(farmer.Zone);
        if (local.Hour is < FirstHour or > LastHour) Break($"{farmer.Name} was written to unasked at {local}");
        if (!IsFirst(farmer, local.Date, commit.Send[^1].Text))
            Break($"{farmer.Name} was reminded twice of the same on {local.Date}");
        foreach (var heap in commit.Farmer.Heaps)
        {
            var then = before.Heaps.FirstOrDefault(one => one.Number == heap.Number);
            if (then is null || heap.Prompts <= then.Prompts) continue;
            if (!IsFirst(farmer, local.Date, $"heap {heap.Number} {then.Step} {then.Due}"))
                Break($"{farmer.Name} was asked twice after heap {heap.Number} on {local.Date}");
            if (then.LastTurned >= local.Date && then.IsTended)
                Break($"{farmer.Name} was reminded of a turning on {local.Date} that was reported");
        }
    }

    /// <summary>One of a kind on a date. By a clock set back a date comes twice: then it is a new one to who has
    /// been heard since.</summary>
    private bool IsFirst(FarmerModel farmer, LocalDate day, string kind)
    {
        var isNew = !farmer.Reminded.TryGetValue((day, kind), out var heardThen)
            || (_clockWasSet && heardThen < farmer.Effects.Count);
        farmer.Reminded[(day, kind)] = farmer.Effects.Count;
        return isNew;
    }

    private void CheckDue(FarmerModel farmer, Commit commit)
    {
        var after = commit.Farmer;
        if (after.Stopped && commit.NextDue is not null) Break($"{farmer.Name} has stopped and is still due");
        var stands = after is { Stopped: false, Group: not null }
            && after.Heaps.Any(heap => heap.IsTended && heap.Due is not null);
        if (stands && commit.NextDue is null) Break($"{farmer.Name} has a heap and is never due");
        // A farmer who is there from the start may have been due before.
        if (farmer.Record is not null && commit.NextDue < commit.At)
            Break($"{farmer.Name} is next due in the past, at {commit.NextDue}");
    }

    private void CheckAnswered(FarmerModel farmer, Commit commit)
    {
        if (commit.Seen is not { } seen || commit.Send.Count > 0 || commit.Answer is not null) return;
        if (farmer.Record is not { Stopped: false, Group: not null } before) return;
        if (Nods.Contains(Arrivals[seen.Id].Text) || before.LastAnswers?.Repeats >= MostRepeats) return;
        Break($"{seen.Id} of {farmer.Name} got no answer");
    }

    /// <summary>A screen was shown: the same step of the same session shows the same.</summary>
    public void Shown(Dialled step, Screen screen)
    {
        var key = (home.KeyOf(step.From), step.Session, step.Step);
        if (_shown.TryAdd(key, (screen, Now))) return;
        var (first, at) = _shown[key];
        if (!_clockWasSet && Now - at < Screen.Kept - Duration.FromMinutes(1) && first.Text != screen.Text)
            Break($"{_farmers[key.Item1].Name} saw something else in {step.Session}/{step.Step} dialled again");
    }
}
