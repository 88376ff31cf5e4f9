using HeapText.Dialog.Engine;
using HeapText.Dialog.Ports;
using NodaTime;

namespace HeapText.Dialog.Screens;

/// <summary>What a step on a screen decided.</summary>
/// <param name="Farmer">The record after the step.</param>
/// <param name="Screen">What the phone shows.</param>
/// <param name="Says">Messages to send besides, in order.</param>
/// <param name="NextDue">When the farmer is due next; null when nothing is to come.</param>
public sealed record ScreenReaction(Farmer Farmer, Screen Screen, IReadOnlyList<Outbound> Says, Instant? NextDue);
