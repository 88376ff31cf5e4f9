using HeapText.Dialog.Engine;
using HeapText.Dialog.Ports;
using HeapText.Dialog.Replies;
using HeapText.Dialog.Wording;
using HeapText.Service.Practice;
using HeapText.Service.Turns;

namespace HeapText.Service.Startup;

/// <summary>What the host is put together from; tests put in their own. The host closes store and journal.</summary>
/// <param name="Store">The opened store.</param>
/// <param name="Conversation">The engine.</param>
/// <param name="Time">The real clock.</param>
/// <param name="Practice">What practice mode adds; null outside it.</param>
internal sealed record Parts(IStore Store, IConversation Conversation, TimeProvider Time, PracticeParts? Practice)
{
    /// <summary>The groups that can be joined.</summary>
    public GroupBook Groups { get; init; } = new(Store);

    /// <summary>The districts' own words, as the conversation reads by them.</summary>
    public WordBook Words { get; init; } = new(new Reader([]));

    /// <summary>What materials are called; null to call them by their keys.</summary>
    public Phrasebook? Book { get; init; }
}

/// <summary>What practice mode adds.</summary>
/// <param name="Journal">What phones got, and the clock's offset.</param>
/// <param name="Clock">The clock that can be moved; it takes the place of the real one.</param>
internal sealed record PracticeParts(PracticeJournal Journal, PracticeClock Clock)
{
    /// <summary>Opens the journal in the data folder and sets the clock to where it stood.</summary>
    public static async Task<PracticeParts> Open(string folder, TimeProvider real)
    {
        var journal = PracticeJournal.Open(folder);
        return new PracticeParts(journal, new PracticeClock(real, await journal.Offset()));
    }
}
