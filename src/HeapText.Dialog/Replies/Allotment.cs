namespace HeapText.Dialog.Replies;

/// <summary>A thing and the amounts and measures that belong to it.</summary>
/// <param name="Thing">The thing.</param>
/// <param name="Quantity">Its amounts and measures as they stand in the text.</param>
internal sealed record Allotment(Part Thing, IReadOnlyList<Part> Quantity)
{
    private const int AmountTwice = 100;
    private const int StrongBreakCrossed = 6;
    private const int WeakBreakCrossed = 3;
    private const int PairDivided = 2;
    private const int LongestGap = 12;

    /// <summary>
    /// Shares the amounts and measures out among the things. Between two things some belong to the one before and the
    /// rest to the one after; the cheapest division of all gaps together is taken.
    /// </summary>
    /// <remarks>
    /// Costs: no thing should have two amounts or two measures; a quantity should not cross a comma, still less a full
    /// stop; an amount should stay with its measure; else the way the clause starts, amount or thing first, holds.
    /// </remarks>
    public static IReadOnlyList<Allotment> Of(List<Part> parts)
    {
        var things = Enumerable.Range(0, parts.Count).Where(i => parts[i].Kind == PartKind.Thing).ToArray();
        var gaps = new Part[things.Length + 1][];
        for (var k = 0; k <= things.Length; k++)
            gaps[k] = Gap(parts, k == 0 ? 0 : things[k - 1] + 1, k == things.Length ? parts.Count : things[k]);
        var cuts = Cheapest(gaps, [.. things.Select(thing => StartsWithQuantity(parts, thing))]);
        var allotments = new Allotment[things.Length];
        for (var k = 0; k < things.Length; k++)
        {
            var own = gaps[k][cuts[k]..].Concat(gaps[k + 1][..cuts[k + 1]]).Where(part => part.IsQuantity);
            allotments[k] = new Allotment(parts[things[k]], [.. own]);
        }

        for (var k = 1; k < allotments.Length; k++)
            if (allotments[k].Quantity is [{ IsOf: true }]
                && allotments[k - 1].Quantity.FirstOrDefault(part => part.Kind == PartKind.Measure) is { } measure)
                allotments[k] = allotments[k] with { Quantity = [.. allotments[k].Quantity, measure] };
        TakeHeading(parts, things, allotments);
        TakeDitto(parts, things, allotments);
        ShareOutEach(parts, things, allotments);
        return allotments;
    }

    private static Part[] Gap(List<Part> parts, int start, int end)
    {
        var gap = parts.GetRange(start, end - start)
            .Where(part => part.IsQuantity || part.IsBreak || part.Kind is PartKind.And or PartKind.Other).ToArray();
        // Nobody writes so much between two materials; a text made to stall the reader must not.
        return gap.Length <= LongestGap ? gap : [.. gap[..(LongestGap / 2)], .. gap[^(LongestGap / 2)..]];
    }

    private static bool StartsWithQuantity(List<Part> parts, int thing)
    {
        var start = thing;
        while (start > 0 && !parts[start - 1].IsBreak && parts[start - 1].Kind != PartKind.And)
            start--;
        return parts.Skip(start).First(part => part.IsQuantity || part.Kind == PartKind.Thing).IsQuantity;
    }

    /// <summary>For each gap, how many of its parts belong to the thing before it.</summary>
    private static int[] Cheapest(Part[][] gaps, bool[] startsWithQuantity)
    {
        var last = gaps.Length - 1;
        var costs = new int[gaps.Length][];
        var from = new int[gaps.Length][];
        costs[0] = [.. Enumerable.Repeat(int.MaxValue / 2, gaps[0].Length + 1)];
        costs[0][0] = 0;
        for (var k = 1; k <= last; k++)
        {
            costs[k] = new int[gaps[k].Length + 1];
            from[k] = new int[gaps[k].Length + 1];
            for (var cut = 0; cut <= gaps[k].Length; cut++)
            {
                var isAllowed = k < last || cut == gaps[k].Length;
                var divide = k < last ? DivisionCost(gaps[k], cut, startsWithQuantity[k - 1]) : 0;
                costs[k][cut] = int.MaxValue / 2;
                for (var before = 0; isAllowed && before < costs[k - 1].Length; before++)
                {
                    var cost = costs[k - 1][before] + divide
                        + OwnCost(gaps[k - 1].AsSpan(before), gaps[k].AsSpan(0, cut));
                    if (cost < costs[k][cut])
                        (costs[k][cut], from[k][cut]) = (cost, before);
                }
            }
        }

        var cuts = new int[gaps.Length];
        cuts[last] = gaps[last].Length;
        for (var k = last; k > 0; k--)
            cuts[k - 1] = from[k][cuts[k]];
        return cuts;
    }

    private static int DivisionCost(Part[] gap, int cut, bool quantityFirst)
    {
        var isPair = cut > 0 && cut < gap.Length && gap[cut - 1].IsQuantity && gap[cut].IsQuantity
            && gap[cut - 1].Kind != gap[cut].Kind;
        var against = quantityFirst ? gap[..cut] : gap[cut..];
        return (isPair ? PairDivided : 0) + against.Count(part => part.IsQuantity);
    }

    private static int OwnCost(ReadOnlySpan<Part> left, ReadOnlySpan<Part> right)
    {
        int amounts = 0, measures = 0, cost = 0, crossed = 0;
        for (var i = left.Length - 1; i >= 0; i--)
            Count(left[i], ref amounts, ref measures, ref cost, ref crossed);
        crossed = 0;
        foreach (var part in right)
            Count(part, ref amounts, ref measures, ref cost, ref crossed);
        return cost + AmountTwice * (Math.Max(0, amounts - 1) + Math.Max(0, measures - 1));
    }

    private static void Count(Part part, ref int amounts, ref int measures, ref int cost, ref int crossed)
    {
        crossed += part.Kind == PartKind.StrongBreak ? StrongBreakCrossed : part.IsQuantity ? 0 : WeakBreakCrossed;
        if (!part.IsQuantity)
            return;
        cost += crossed;
        amounts += part.Kind == PartKind.Amount ? 1 : 0;
        measures += part.Kind == PartKind.Measure ? 1 : 0;
    }

    /// <summary>"Sacks: 4 leaves, 2 ash": the measure before a colon is that of all up to the full stop.</summary>
    private static void TakeHeading(List<Part> parts, int[] things, Allotment[] allotments)
    {
        for (var k = 1; k < things.Length; k++)
        {
            var start = parts.FindLastIndex(things[k], part => part.Kind == PartKind.StrongBreak) + 1;
            if (parts[start].Kind == PartKind.Measure && parts[start + 1].IsAfterColon
                && allotments[k].Quantity is [{ Kind: PartKind.Amount }])
                allotments[k] = allotments[k] with { Quantity = [.. allotments[k].Quantity, parts[start]] };
        }
    }

    /// <summary>"4 sacks of leaves, the same of weeds": as much as of the thing before.</summary>
    private static void TakeDitto(List<Part> parts, int[] things, Allotment[] allotments)
    {
        for (var k = 1; k < things.Length; k++)
            if (allotments[k].Quantity.Count == 0 && IsBeside(things[k]))
                allotments[k] = allotments[k] with { Quantity = allotments[k - 1].Quantity };

        bool IsBeside(int thing) => parts[thing - 1].Kind == PartKind.Ditto
            || (thing + 1 < parts.Count && parts[thing + 1].Kind == PartKind.Ditto);
    }

    /// <summary>"2 buckets each of A and B", "A and B 2 buckets each": the others get the same.</summary>
    private static void ShareOutEach(List<Part> parts, int[] things, Allotment[] allotments)
    {
        for (var i = 0; i < parts.Count; i++)
        {
            if (parts[i].Kind != PartKind.Each)
                continue;
            var next = i + 1;
            while (next < parts.Count && (parts[next].IsQuantity || parts[next].Kind == PartKind.And))
                next++;
            var isForward = next < parts.Count && parts[next].Kind == PartKind.Thing;
            var source = isForward ? Array.IndexOf(things, next) : Array.FindLastIndex(things, thing => thing < i);
            var step = isForward ? 1 : -1;
            for (var k = source + step; source >= 0 && k >= 0 && k < things.Length
                 && allotments[k].Quantity.Count == 0 && IsOneSentence(parts, things[k], things[k - step]); k += step)
                allotments[k] = allotments[k] with { Quantity = allotments[source].Quantity };
        }
    }

    private static bool IsOneSentence(List<Part> parts, int one, int other) =>
        !parts.GetRange(Math.Min(one, other), Math.Abs(one - other)).Any(part => part.Kind == PartKind.StrongBreak);
}
