using HeapText.Dialog.Engine;
using HeapText.Dialog.Ports;
using HeapText.Dialog.Screens;
using NodaTime;

namespace HeapText.Simulator.Tests.Rules;

/// <summary>Notices a conversation that breaks: the service would hand the farmer to a person and go on.</summary>
internal sealed class WatchedConversation(IConversation inner, RuleBook rules) : IConversation
{
    public Reaction Hear(Farmer? farmer, string subject, string line, string text, Instant now) =>
        Watch(() => inner.Hear(farmer, subject, line, text, now));

    public Reaction Ring(Farmer? farmer, string subject, string line, Instant now) =>
        Watch(() => inner.Ring(farmer, subject, line, now));

    public ScreenReaction Dial(Farmer? farmer, string subject, Dialled step, Instant now) =>
        Watch(() => inner.Dial(farmer, subject, step, now));

    public Reaction Wake(Farmer farmer, Instant now) => Watch(() => inner.Wake(farmer, now));

    public Instant? NextDue(Farmer farmer, Instant now) => Watch(() => inner.NextDue(farmer, now));

    private T Watch<T>(Func<T> decide)
    {
        try
        {
            return decide();
        }
        catch (Exception fault)
        {
            rules.Break($"the conversation broke: {fault}");
            throw;
        }
    }
}
