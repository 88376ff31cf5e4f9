using HeapText.Dialog.Ports;
using NodaTime;

namespace HeapText.Store.Records;

/// <summary>A message that will never be sent, as it is written.</summary>
/// <param name="Key">The farmer.</param>
/// <param name="At">When it was given up.</param>
/// <param name="Reason">Why.</param>
/// <param name="Message">The message.</param>
internal sealed record SetAsideEntry(FarmerKey Key, Instant At, string Reason, Outbound Message);
