using System.Text.Json;
using System.Xml.Linq;
using HeapText.Agronomy.Heap;

namespace HeapText.Agronomy.Tests.Heap;

/// <summary>Draws docs/agronomy/diagnosis.md from the table; meanings come from the docs in the code.</summary>
internal static class DiagnosisPage
{
    private static readonly XDocument Docs =
        XDocument.Load(Path.Combine(AppContext.BaseDirectory, "HeapText.Agronomy.xml"));

    internal static string Text() => string.Join('\n',
    [
        """
        # How a fault is found

        Drawn from `src/HeapText.Agronomy/Heap/diagnosis.csv` and the classes beside it; a test compares the two, and
        `HEAPTEXT_ACCEPT=1` writes it anew. Another test walks every combination of heat, smell, moisture, animals,
        phase, form and rod, turned lately or not, after every action: each gets one or two actions, none contradicts
        the other, none repeats what was just done.

        The first row that holds counts, once for the heap and once for the animals; what animals ask for comes second,
        or first where the heap asks for no work. An empty cell holds always, `?` where nothing was told. Source keys
        are in [sources.md](sources.md).

        **What was done last.** A step is not asked again the next day; some rest two or three days, the test of
        readiness a week (`HeapMemory.cs`). Until then its "instead" is asked, and the next check comes within two
        days. A turning that is planned for today is asked for even the day after another. The same advice on the same
        complaint a second time within ten days is told to an officer. "Then" is asked where the first action was done
        within ten days and did not help.

        **Phases.** Fresh: days 0-2. Heating: days 3-5. Hot: until the last turning. Cooling: from then until settled,
        or more than 25 days old and long since turned. Curing: after.

        **Rod.** A wooden stick feels about ten degrees cooler than the heap, so cool on a stick is not yet a fault,
        and hot on a stick is very hot.

        ## The table

        | row | when | finds | asks for | then | next check | source |
        | --- | --- | --- | --- | --- | --- | --- |
        """,
        .. DiagnosisTable.Rows.Select(Row),
        """

        ## Urgent

        These go first, alone, and to a person; sources in `UrgentAdvice.cs`.

        | sign | finds | asks for |
        | --- | --- | --- |
        """,
        .. UrgentAdvice.Of.Select(one => Cells(
            JsonNamingPolicy.KebabCaseLower.ConvertName(one.Key.ToString()),
            one.Value.Finding.Cause,
            string.Join(", ", one.Value.Actions))),
        """

        ## Actions

        | key | meaning | turns it | instead, when just done |
        | --- | --- | --- | --- |
        """,
        .. HeapActions.All.Values.Select(action => Cells(
            action.Key,
            Meaning(typeof(HeapActions), action.Key),
            action.HasTurning ? "yes" : "",
            action.Otherwise ?? "")),
        """

        ## Causes

        | key | meaning |
        | --- | --- |
        """,
        .. HeapCauses.All.Select(key => Cells(key, Meaning(typeof(HeapCauses), key))),
        "",
    ]);

    private static string Row(DiagnosisRow row)
    {
        var when = DiagnosisRow.Columns.Where(column => row.When[column].Length > 0)
            .Select(column => $"{column} {row.When[column].Replace(" ", ", ", StringComparison.Ordinal)}");
        var finds = row.Findings
            .Select(finding => $"{finding.Cause} ({finding.Confidence.ToString().ToLowerInvariant()})");
        return Cells(
            row.Name,
            string.Join("; ", when),
            string.Join(", ", finds),
            string.Join(", ", row.Actions),
            string.Join(", ", row.Then),
            $"{row.NextCheckDays} d",
            row.Source);
    }

    private static string Cells(params string[] cells) => $"| {string.Join(" | ", cells)} |";

    private static string Meaning(Type list, string key)
    {
        var field = list.GetFields().Single(one => one.IsLiteral && (string)one.GetRawConstantValue()! == key);
        var summary = Docs.Descendants("member")
            .Single(one => one.Attribute("name")!.Value == $"F:{list}.{field.Name}").Value;
        return string.Join(' ', summary.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
    }
}
