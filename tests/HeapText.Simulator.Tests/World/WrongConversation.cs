using HeapText.Dialog.Engine;
using HeapText.Dialog.Ports;
using HeapText.Dialog.Screens;
using NodaTime;

namespace HeapText.Simulator.Tests.World;

/// <summary>Ways in which a conversation could be wrong, to prove that the rules notice.</summary>
internal enum Mistake
{
    WritesAtNight,
    WritesAfterStop,
    RemindsTwice,
    ForgetsToWake,
    RepeatsIds,
    KeepsSilent,
}

/// <summary>The real conversation but for one mistake.</summary>
internal sealed class WrongConversation(IConversation right, Mistake mistake) : IConversation
{
    private static readonly Duration Half = Duration.FromHours(12);

    public Reaction Hear(Farmer? farmer, string subject, string line, string text, Instant now)
    {
        var reaction = right.Hear(farmer, subject, line, text, now);
        if (mistake == Mistake.KeepsSilent && text == "help") reaction = reaction with { Says = [] };
        if (mistake == Mistake.RepeatsIds && reaction.Farmer.MessagesMade % 3 == 0)
            reaction = reaction with { Farmer = reaction.Farmer with { MessagesMade = 1 } };
        return Late(reaction);
    }

    public Reaction Ring(Farmer? farmer, string subject, string line, Instant now) =>
        Late(right.Ring(farmer, subject, line, now));

    public ScreenReaction Dial(Farmer? farmer, string subject, Dialled step, Instant now) =>
        right.Dial(farmer, subject, step, now);

    public Reaction Wake(Farmer farmer, Instant now)
    {
        switch (mistake)
        {
            case Mistake.WritesAtNight:
                return Late(right.Wake(farmer, now + Half));
            case Mistake.WritesAfterStop when farmer.Stopped:
                return right.Wake(farmer with { Stopped = false }, now);
            case Mistake.RemindsTwice:
                var said = right.Wake(farmer, now);
                return said.Says.Count == 0
                    ? said
                    : new Reaction(
                        farmer with { MessagesMade = said.Farmer.MessagesMade }, said.Says,
                        now + Duration.FromMinutes(1));
            default:
                return right.Wake(farmer, now);
        }
    }

    public Instant? NextDue(Farmer farmer, Instant now) => right.NextDue(farmer, now);

    private Reaction Late(Reaction reaction) => mistake switch
    {
        Mistake.WritesAtNight => reaction with { NextDue = reaction.NextDue + Half },
        Mistake.WritesAfterStop when reaction.Farmer.Stopped => reaction with
        {
            NextDue = right.NextDue(reaction.Farmer with { Stopped = false }, Instant.MinValue),
        },
        Mistake.ForgetsToWake when reaction.Farmer.Heaps.Count > 0 => reaction with { NextDue = null },
        _ => reaction,
    };
}
