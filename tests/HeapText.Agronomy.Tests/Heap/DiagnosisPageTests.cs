using HeapText.Agronomy.Heap;

namespace HeapText.Agronomy.Tests.Heap;

/// <summary>The table as data, and its page of docs.</summary>
public sealed class DiagnosisPageTests
{
    [Fact]
    public void Rows_Each_NameKnownCausesActionsAndSources()
    {
        Assert.Equal(
            DiagnosisTable.Rows.Count, DiagnosisTable.Rows.Select(row => row.Name).Distinct().Count());
        Assert.All(DiagnosisTable.Rows, row =>
        {
            Assert.Empty(row.Findings.Select(finding => finding.Cause).Except(HeapCauses.All));
            Assert.Empty(row.Actions.Concat(row.Then).Except(HeapActions.All.Keys));
            Assert.InRange(row.NextCheckDays, 1, 30);
            Assert.Empty(SourceKeys.In(row.Source).Except(SourceKeys.Known));
            Assert.Matches(@"\[[A-Z0-9]+\]|common practice, no source|chosen|derived", row.Source);
        });
    }

    [Fact]
    public void Rows_OfTheHeap_AskForOneOrTwoActions() => Assert.All(
        DiagnosisTable.Rows.Where(row => !row.IsOfPests), row => Assert.InRange(row.Actions.Count, 1, 2));

    [Fact]
    public void Causes_Each_AreFoundBySomeRowOrSign()
    {
        var found = DiagnosisTable.Rows.SelectMany(row => row.Findings)
            .Concat(UrgentAdvice.Of.Values.Select(advice => advice.Finding)).Select(finding => finding.Cause);

        Assert.Empty(HeapCauses.All.Except(found));
    }

    [Fact]
    public void Actions_Each_AreAskedForBySomeRowOrSign()
    {
        var asked = DiagnosisTable.Rows.SelectMany(row => row.Actions.Concat(row.Then))
            .Concat(UrgentAdvice.Of.Values.SelectMany(advice => advice.Actions));

        Assert.Empty(HeapActions.All.Keys.Except(asked));
    }

    [Fact]
    public void Contradictions_Each_NameKnownActions() => Assert.Empty(
        HeapActions.Contradictions.SelectMany(pair => pair.One.Concat(pair.Other)).Except(HeapActions.All.Keys));

    [Fact]
    public void Page_OfTheTable_IsWhatTheDocsShow() =>
        Repository.AssertPage(DiagnosisPage.Text(), "docs", "agronomy", "diagnosis.md");
}
