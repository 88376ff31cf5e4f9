using HeapText.Agronomy.Heap;

namespace HeapText.Agronomy.Tests.Heap;

/// <summary>The page of docs about the methods.</summary>
public sealed class MethodsPageTests
{
    [Fact]
    public void Page_OfTheMethods_IsWhatTheDocsShow() =>
        Repository.AssertPage(Text(), "docs", "agronomy", "methods.md");

    private static string Text() => string.Join('\n',
    [
        """
        # Methods

        Drawn from `src/HeapText.Agronomy/Heap/methods.csv`; a test compares the two, and `HEAPTEXT_ACCEPT=1` writes it
        anew. Days count from building, day 0. A turning is planned from the day the one before was really done, so a
        late turning moves those after it. Source keys are in [sources.md](sources.md); confidence is that of
        materials: C from memory or chosen in part, D weak.

        ## Size

        | method | form | wide | long | high or deep | at least | source | confidence |
        | --- | --- | --- | --- | --- | --- | --- | --- |
        """,
        .. CsvRows.OfResource("Heap.methods.csv").Select(row => Cells(
            row["key"],
            row["form"],
            $"{row["narrowest_m"]}-{row["widest_m"]} m",
            $"to {row["longest_m"]} m",
            $"to {row["highest_m"]} m",
            $"{row["least_litres"]} L",
            row["source"],
            row["confidence"])),
        """

        ## Calendar, when every turning is done on its day

        | method | check only, day | turn, day | warm again? day | cured, day | ready, days |
        | --- | --- | --- | --- | --- | --- |
        """,
        .. HeapMethods.All.Values.Select(method => Cells(
            method.Key,
            string.Join(", ", method.CheckDays),
            string.Join(", ", method.TurnDays),
            $"{method.TurnDays[^1] + method.SettleDays}",
            $"{method.CuredDay}",
            $"{method.ReadyLowDays}-{method.ReadyHighDays}")),
        """

        ## Choice

        By rain, way to the water, labour and what there is to heap; the first row that holds (`MethodChoice.cs`). What
        is not known decides nothing. "Also" names what else suits: the pit only where the rain is known and not heavy,
        hot-turned only where someone can turn often and water is not far.

        | rain | water | labour | heap | method | also |
        | --- | --- | --- | --- | --- | --- |
        | any | any | any | below 1 m3 | small-ring; below 500 L gather more first | what would suit were there 1 m3 |
        | dry | far | any | any | dry-season-pit | slow-heap |
        | any | any | little | any | slow-heap | dry-season-pit |
        | dry | unknown | any | any | dry-season-pit | daily-then-weekly, slow-heap |
        | any | near | often | any | hot-turned | daily-then-weekly |
        | any | any | any | any | daily-then-weekly | hot-turned, slow-heap |

        A pit where it is dry, a heap where it is wet: [DRYPIT], [MULLER]. Pits fill with water in heavy rain, so heavy
        rain never gives one: [HOWARD]. At least 1 m3: [MULLER]. What labour and the way to the water decide is common
        practice, no source.

        ## An office's own

        Settings under `Methods` change the days of a method, or add one like another:

        ```json
        "Methods": {
          "hill-heap": { "Like": "daily-then-weekly", "TurnDays": "4 8 16", "ReadyLowDays": 60 }
        }
        ```

        `CheckDays`, `TurnDays` (days with blanks), `SettleDays`, `CuringDays`, `MoreRestDays`, `ReadyLowDays` and
        `ReadyHighDays` may be given; the rest is as in the method it is like. The start names every fault.

        """,
    ]);

    private static string Cells(params string[] cells) => $"| {string.Join(" | ", cells)} |";
}
