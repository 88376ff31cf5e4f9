using System.Text.Json;
using System.Text.Json.Serialization;
using HeapText.Agronomy;
using HeapText.Agronomy.Heap;

namespace HeapText.Service.Verbs;

/// <summary>What <c>diagnose</c> reads; everything may be null or left out.</summary>
[JsonNumberHandling(JsonNumberHandling.Strict)]
internal sealed record DiagnoseInput(
    string? Heat,
    string? Smell,
    string? Moisture,
    string? Pests,
    int? AgeDays,
    int? DaysSinceTurn,
    string? Method,
    string? Rod,
    IReadOnlyList<string?>? Signs,
    string? LastAction,
    int? LastActionDays)
{
    private const int MostDays = 3650;

    internal InputFault? Check() =>
        CheckWord<Heat>("heat", Heat)
        ?? CheckWord<Smell>("smell", Smell)
        ?? CheckWord<Moisture>("moisture", Moisture)
        ?? CheckWord<Pests>("pests", Pests)
        ?? CheckWord<RodKind>("rod", Rod)
        ?? CheckOne("method", Method, HeapMethods.All.Keys)
        ?? CheckOne("lastAction", LastAction, HeapActions.All.Keys)
        ?? (Signs ?? []).Select((sign, i) => CheckWord<UrgentSign>($"signs[{i}]", sign ?? ""))
            .FirstOrDefault(fault => fault is not null)
        ?? CheckDays("ageDays", AgeDays)
        ?? CheckDays("daysSinceTurn", DaysSinceTurn)
        ?? CheckDays("lastActionDays", LastActionDays)
        ?? (DaysSinceTurn > AgeDays ? new InputFault("daysSinceTurn", "must be at most ageDays") : null)
        ?? (LastAction is not null && LastActionDays is null
            ? new InputFault("lastActionDays", "must be given with lastAction")
            : null)
        ?? (LastAction is null && LastActionDays is not null
            ? new InputFault("lastAction", "must be given with lastActionDays")
            : null);

    internal DiagnosisInput ToHeap() =>
        DiagnosisInput.At(Method is null ? HeapMethods.Usual : HeapMethods.All[Method], AgeDays, DaysSinceTurn) with
        {
            Heat = Value<Heat>(Heat),
            Smell = Value<Smell>(Smell),
            Moisture = Value<Moisture>(Moisture),
            Pests = Value<Pests>(Pests),
            Rod = Value<RodKind>(Rod),
            Signs = [.. (Signs ?? []).Select(sign => Value<UrgentSign>(sign)!.Value)],
            LastActions = LastAction is null ? [] : [new LastAction(LastAction, LastActionDays!.Value)],
        };

    private static InputFault? CheckWord<T>(string field, string? word)
        where T : struct, Enum => CheckOne(field, word, Enum.GetValues<T>().Select(Key));

    private static InputFault? CheckOne(string field, string? word, IEnumerable<string> known) =>
        word is null || known.Contains(word, StringComparer.Ordinal)
            ? null
            : new InputFault(field, $"must be one of {string.Join(", ", known)}");

    private static InputFault? CheckDays(string field, int? days) =>
        days is null or (>= 0 and <= MostDays) ? null : new InputFault(field, $"must be from 0 to {MostDays}");

    private static T? Value<T>(string? word)
        where T : struct, Enum =>
        word is null ? null : Enum.GetValues<T>().Single(value => Key(value) == word);

    private static string Key<T>(T value)
        where T : struct, Enum => JsonNamingPolicy.KebabCaseLower.ConvertName(value.ToString());
}
