using System.Text.Json;
using HeapText.Agronomy.Heap;

namespace HeapText.Service.Verbs;

/// <summary>What <c>diagnose</c> writes; keys are listed in docs/agronomy/diagnosis.md.</summary>
internal sealed record DiagnoseOutput(
    IReadOnlyList<FindingOutput> Findings,
    IReadOnlyList<string> Actions,
    bool Urgent,
    int NextCheckDays,
    bool TurnNow,
    bool NeedsPerson,
    IReadOnlyList<string> Cautions)
{
    internal static DiagnoseOutput From(Diagnosis diagnosis) => new(
        [.. diagnosis.Findings.Select(FindingOutput.From)],
        diagnosis.Actions,
        diagnosis.IsUrgent,
        diagnosis.NextCheckDays,
        diagnosis.TurnNow,
        diagnosis.NeedsPerson,
        diagnosis.Cautions);
}

/// <summary>A cause and how sure it is: low, medium or high.</summary>
internal sealed record FindingOutput(string Cause, string Confidence)
{
    internal static FindingOutput From(Finding finding) => new(
        finding.Cause, JsonNamingPolicy.KebabCaseLower.ConvertName(finding.Confidence.ToString()));
}
