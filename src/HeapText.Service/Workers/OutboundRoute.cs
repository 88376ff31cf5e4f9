using HeapText.Dialog.Ports;

namespace HeapText.Service.Workers;

/// <summary>A way out for messages.</summary>
/// <param name="Carrier">Hands them to the gateway.</param>
/// <param name="Budget">How much it may send; null for no limit.</param>
internal sealed record OutboundRoute(ICarrier Carrier, LineBudget? Budget);
