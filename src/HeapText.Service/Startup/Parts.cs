using HeapText.Dialog.Engine;
using HeapText.Dialog.Ports;
using HeapText.Service.Practice;

namespace HeapText.Service.Startup;

/// <summary>What the host is put together from; tests put in their own.</summary>
/// <param name="Store">The opened store; the host closes it.</param>
/// <param name="Conversation">The engine.</param>
/// <param name="Time">The real clock.</param>
/// <param name="Journal">The practice journal; null outside practice mode.</param>
internal sealed record Parts(IStore Store, IConversation Conversation, TimeProvider Time, PracticeJournal? Journal);
