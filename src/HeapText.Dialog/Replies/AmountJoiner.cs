namespace HeapText.Dialog.Replies;

/// <summary>Turns number words, fractions, ranges and corrections into single amounts.</summary>
internal sealed class AmountJoiner(List<Part> parts)
{
    /// <summary>More than this of any measure cannot be meant.</summary>
    private const decimal MostOfAMeasure = 1000;

    /// <summary>A number this large that counts no measure is somebody's telephone.</summary>
    private const decimal SmallestTelephone = 10_000_000;

    /// <summary>How many days ago the text speaks of; 0 when it does not.</summary>
    public int DaysAgo { get; private set; }

    public void Join()
    {
        Each(DropNod);
        Each(Unsay);
        Each(CountArticle);
        Each(TakeCounted);
        Each(Negate);
        Each(DropSecondSaying);
        Each(Compose);
        Each(JoinFraction);
        Each(TakeSize);
        Each(TakeLowerOfRange);
        Each(Correct);
        Each(Replace);
        Each(DoubtTwoFigures);
        Each(Scale);
        Each(CountOne);
        Each(TakeWater);
        Each(Judge);
    }

    private void Each(Action<int> step)
    {
        for (var i = 0; i < parts.Count; i++)
            step(i);
    }

    private PartKind? KindAt(int at) => at >= 0 && at < parts.Count ? parts[at].Kind : null;

    private bool IsAmount(int at) => KindAt(at) == PartKind.Amount;

    /// <summary>In "3 sacks, no sorry 2" the "no" denies nothing.</summary>
    private void DropNod(int i)
    {
        var next = KindAt(i + 1) == PartKind.WeakBreak ? i + 2 : i + 1;
        if (KindAt(i) is PartKind.Absent or PartKind.Not && KindAt(next) == PartKind.Correction)
            parts.RemoveRange(i, next - i);
    }

    /// <summary>"I said 3, it is 4 buckets": the 3 is taken back; "I said 3 buckets" only says it.</summary>
    private void Unsay(int i)
    {
        if (KindAt(i) != PartKind.Said)
            return;
        var amount = KindAt(i + 1) == PartKind.Measure ? i + 2 : i + 1;
        var isTakenBack = IsAmount(amount) && NextAmount(amount + 1) > 0;
        parts[i] = new Part(isTakenBack ? PartKind.Not : PartKind.Other);
    }

    /// <summary>Where "a" and "one" are the same word, it counts before a measure or range and after tens.</summary>
    private void CountArticle(int i)
    {
        if (KindAt(i) != PartKind.One || parts[i].Value == 0)
            return;
        var before = KindAt(i - 1) == PartKind.And ? i - 2 : i - 1;
        var isUnits = IsAmount(before) && parts[before].IsWord && parts[before].Value >= 20;
        if (isUnits || KindAt(i - 1) == PartKind.Between || KindAt(i + 1) is PartKind.Measure or PartKind.Or)
            parts[i] = parts[i] with { Kind = PartKind.Amount };
    }

    /// <summary>"3 days ago", "day 9", "20 plants": the number is no amount of a material.</summary>
    private void TakeCounted(int i)
    {
        if (KindAt(i) is not (PartKind.Days or PartKind.Counted))
            return;
        var number = IsAmount(i - 1) ? i - 1 : IsAmount(i + 1) ? i + 1 : -1;
        if (number < 0)
            return;
        var isAgo = KindAt(i) == PartKind.Days
            && (KindAt(Math.Max(i, number) + 1) == PartKind.Ago || KindAt(Math.Min(i, number) - 1) == PartKind.Ago);
        if (isAgo && parts[number].Value is > 0 and <= MostOfAMeasure)
            DaysAgo = (int)parts[number].Value;
        parts[number] = new Part(PartKind.Other);
    }

    /// <summary>"5 jerrycans of water", "water 3 buckets": no amount of the next material either.</summary>
    private void TakeWater(int i)
    {
        if (KindAt(i) != PartKind.Water)
            return;
        var start = AreQuantity(i - 2) ? i - 2 : AreQuantity(i + 1) ? i + 1 : -1;
        if (start >= 0)
            (parts[start], parts[start + 1]) = (new Part(PartKind.Other), new Part(PartKind.Other));

        bool AreQuantity(int at) => (KindAt(at), KindAt(at + 1))
            is (PartKind.Amount, PartKind.Measure) or (PartKind.Measure, PartKind.Amount);
    }

    private void Negate(int i)
    {
        if (KindAt(i) == PartKind.Minus && IsAmount(i + 1))
        {
            parts[i + 1] = parts[i + 1] with { IsBad = true };
            parts.RemoveAt(i);
        }
    }

    /// <summary>"Twenty five" is one number; "two two" gives two to each.</summary>
    private void Compose(int i)
    {
        if (!IsAmount(i) || !parts[i].IsWord)
            return;
        var other = KindAt(i + 1) == PartKind.And ? i + 2 : i + 1;
        if (!IsAmount(other) || !parts[other].IsWord)
            return;
        var (high, low) = (parts[i].Value, parts[other].Value);
        if (high is >= 1 and < 100 && low is 100 or 1000 && other == i + 1)
        {
            parts[i] = parts[i] with { Value = high * low };
            parts.RemoveAt(other);
            Compose(i);
        }
        else if (high >= 10 && ((high % 100 == 0 && low < 100) || (high % 10 == 0 && low < 10)))
        {
            parts[i] = parts[i] with { Value = high + low };
            parts.RemoveRange(i + 1, other - i);
        }
        else if (high == low && other == i + 1)
            parts[other] = new Part(PartKind.Each);
    }

    /// <summary>"Six (6) bundles": one amount, in words and in figures.</summary>
    private void DropSecondSaying(int i)
    {
        if (IsAmount(i) && IsAmount(i + 1) && parts[i].Value == parts[i + 1].Value
            && parts[i].IsWord != parts[i + 1].IsWord)
            parts.RemoveAt(i + 1);
    }

    /// <summary>In "3 4 buckets of ash" nobody knows which was meant; "dung 3 4 buckets ash" gives one to
    /// each.</summary>
    private void DoubtTwoFigures(int i)
    {
        if (!IsAmount(i) || !IsAmount(i + 1) || parts[i].IsWord || parts[i + 1].IsWord)
            return;
        var end = KindAt(i + 2) == PartKind.Measure ? i + 3 : i + 2;
        var isMeasured = end == i + 3 || KindAt(i - 1) == PartKind.Measure;
        if (!isMeasured || (KindAt(i - 1) == PartKind.Thing && KindAt(end) == PartKind.Thing))
            return;
        parts[i] = parts[i] with { IsBad = true };
        parts.RemoveAt(i + 1);
    }

    /// <summary>"500 grams": in the measure that grams are counted in.</summary>
    private void Scale(int i)
    {
        if (KindAt(i) != PartKind.Measure || parts[i].Value == 0)
            return;
        var amount = IsAmount(i - 1) ? i - 1 : i + 1;
        if (IsAmount(amount))
            parts[amount] = parts[amount] with { Value = parts[amount].Value * parts[i].Value };
    }

    private void JoinFraction(int i)
    {
        if (KindAt(i) != PartKind.Fraction)
            return;
        var from = KindAt(i - 1) == PartKind.One ? i - 1 : i;
        var value = parts[i].Value;
        if (KindAt(i + 1) == PartKind.One)
            parts.RemoveAt(i + 1);
        var isNewItem = KindAt(i + 1) == PartKind.Measure;
        var hasAnd = KindAt(from - 1) == PartKind.And;
        var joined = hasAnd || parts[from].IsJoined;
        var before = hasAnd ? from - 2 : from - 1;
        if (IsAmount(before) && (joined || !parts[i].IsWord) && (!isNewItem || KindAt(before - 1) != PartKind.Measure))
            Fold(before, before + 1, i, value);
        else if (!isNewItem && KindAt(before) == PartKind.Measure && IsAmount(before - 1)
            && (joined || (!parts[i].IsWord && IsEndOfItem(i + 1))))
            Fold(before - 1, before + 1, i, value);
        else if (joined && !isNewItem && KindAt(before) == PartKind.Measure)
        {
            // "A bucket and a half", also where the one is not said.
            var one = KindAt(before - 1) == PartKind.One ? before - 1 : before;
            parts.RemoveRange(before + 1, i - before);
            if (one < before)
                parts.RemoveAt(one);
            parts.Insert(one, new Part(PartKind.Amount, Value: 1 + value));
        }
        else
        {
            parts[i] = new Part(PartKind.Amount, Value: value);
            parts.RemoveRange(from, i - from);
        }
    }

    private bool IsEndOfItem(int at) =>
        KindAt(at) is null or PartKind.WeakBreak or PartKind.StrongBreak or PartKind.And;

    private void Fold(int amount, int first, int last, decimal value)
    {
        parts[amount] = parts[amount] with { Value = parts[amount].Value + value };
        parts.RemoveRange(first, last - first + 1);
    }

    /// <summary>"2 sacks of 50 kg", "sacks 2 of kilo 50": the weight tells which sack is meant.</summary>
    private void TakeSize(int i)
    {
        if (KindAt(i) != PartKind.Measure || !ContainerSizes.Has(parts[i].Key))
            return;
        var size = IsAmount(i + 1) && KindAt(i + 2) == PartKind.Measure && IsAmount(i + 3) ? i + 2 : i + 1;
        var (amount, unit) = IsAmount(size) ? (size, size + 1) : (size + 1, size);
        if (!IsAmount(amount) || KindAt(unit) != PartKind.Measure
            || ContainerSizes.Of(parts[i].Key, parts[amount].Value, parts[unit].Key) is not { } container)
            return;
        parts[i] = parts[i] with { Key = container };
        parts.RemoveRange(size, 2);
    }

    /// <summary>"3 or 4 sacks", "3-4", "between 3 and 4": the lower.</summary>
    private void TakeLowerOfRange(int i)
    {
        if (!IsAmount(i))
            return;
        var measured = KindAt(i + 1) == PartKind.Measure && KindAt(i + 2) == PartKind.Or ? 1 : 0;
        var isBetween = KindAt(i - 1) == PartKind.Between
            || (KindAt(i - 1) == PartKind.Measure && KindAt(i - 2) == PartKind.Between);
        var tie = KindAt(i + 1 + measured);
        var isTakenBack = KindAt(KindAt(i - 1) == PartKind.Measure ? i - 2 : i - 1) == PartKind.Not;
        if (IsAmount(i + 1) && parts[i].IsWord && parts[i + 1].IsWord && parts[i + 1].Value == parts[i].Value + 1
            && !isTakenBack)
        {
            // "Two three sacks" is two or three.
            parts.RemoveAt(i + 1);
            return;
        }

        var isRange = tie is PartKind.Or or PartKind.Range || (isBetween && tie == PartKind.And);
        if (!isRange || !IsAmount(i + 2 + measured) || (measured == 1 && KindAt(i + 4) == PartKind.Thing))
            return;
        parts[i] = parts[i] with { Value = Math.Min(parts[i].Value, parts[i + 2 + measured].Value) };
        parts.RemoveRange(i + 1 + measured, 2);
    }

    /// <summary>"Not 3, 4 buckets", "3 no 4 buckets": the number taken back is dropped.</summary>
    private void Correct(int i)
    {
        if (KindAt(i) == PartKind.Not && KindAt(i + 1) == PartKind.Measure)
            CorrectMeasure(i);
        else if (KindAt(i) == PartKind.Not && IsAmount(i + 1))
        {
            var hasMeasure = KindAt(i + 2) == PartKind.Measure;
            var next = NextAmount(i + 2);
            var isMeasured = next >= 0
                && (KindAt(next + 1) == PartKind.Measure
                || (KindAt(next - 1) == PartKind.Measure && next - 1 > i + 2));
            // "3 and not 2 buckets": the measure is that of the number before.
            var former = KindAt(i - 1) is PartKind.And or PartKind.WeakBreak ? i - 2 : i - 1;
            var keepsMeasure = hasMeasure && (next >= 0 ? !isMeasured : IsAmount(former));
            var first = keepsMeasure && next < 0 ? former + 1 : i;
            parts.RemoveRange(first, i - first + 2 + (hasMeasure && !keepsMeasure ? 1 : 0));
            if (first < i)
                return;
            if (KindAt(i) == PartKind.WeakBreak && next >= 0)
                parts.RemoveAt(i);
        }
        else if (IsAmount(i) && KindAt(i - 1) == PartKind.Measure && KindAt(i + 1) is PartKind.Not or PartKind.Absent
            && KindAt(i + 2) == PartKind.Measure && IsAmount(i + 3))
            parts.RemoveRange(i - 1, 3);
        else if (IsAmount(i))
        {
            var measured = KindAt(i + 1) == PartKind.Measure ? 1 : 0;
            var at = i + 1 + measured;
            at = KindAt(at) == PartKind.WeakBreak ? at + 1 : at;
            if (KindAt(at) != PartKind.Absent && !(KindAt(at) == PartKind.Not && KindAt(at + 1) == PartKind.WeakBreak))
                return;
            var next = KindAt(at + 1) == PartKind.WeakBreak ? at + 2 : at + 1;
            if (IsAmount(next))
                parts.RemoveRange(i, (KindAt(next + 1) == PartKind.Measure || measured == 0 ? next : i + 1) - i);
        }
    }

    /// <summary>"Not sacks 3, 4", "not buckets but basins 3": the new amount keeps the measure if it has
    /// none.</summary>
    private void CorrectMeasure(int i)
    {
        var after = IsAmount(i + 2) ? i + 3 : i + 2;
        var start = KindAt(after) == PartKind.WeakBreak ? after + 1 : after;
        var isMeasured = KindAt(start) == PartKind.Measure
            || (IsAmount(start) && KindAt(start + 1) == PartKind.Measure);
        if (isMeasured)
            parts.RemoveRange(i, start - i);
        else if (after == i + 3 && NextAmount(after) > 0)
        {
            parts.RemoveRange(i + 2, start - i - 2);
            parts.RemoveAt(i);
        }
    }

    /// <summary>"3 sorry 4 buckets", "3 buckets of dung, sorry 4": the number before gives way.</summary>
    private void Replace(int i)
    {
        if (IsTakenBack(i))
            parts[i] = new Part(PartKind.Correction);
        if (KindAt(i) != PartKind.Correction)
            return;
        var next = IsAmount(i + 1) || IsAmount(i + 2) ? i + 1 : -1;
        var former = i - 1;
        while (former > i - 6 && !IsAmount(former) && KindAt(former) is not (null or PartKind.StrongBreak))
            former--;
        if (next < 0 || !IsAmount(former))
            return;
        var isMeasured = parts.Skip(next).Take(3).Any(part => part.Kind == PartKind.Measure);
        if (isMeasured && KindAt(former + 1) == PartKind.Measure)
            parts.RemoveRange(former, 2);
        else if (isMeasured && KindAt(former - 1) == PartKind.Measure)
            parts.RemoveRange(former - 1, 2);
        else
            parts.RemoveAt(former);
    }

    /// <summary>"3 buckets of dung, no 4": with a bare amount to its end, a "no" after a thing corrects.</summary>
    private bool IsTakenBack(int i)
    {
        var thing = KindAt(i - 1) == PartKind.WeakBreak ? i - 2 : i - 1;
        var end = KindAt(i + 2) == PartKind.Measure ? i + 3 : i + 2;
        return KindAt(i) == PartKind.Absent && KindAt(thing) == PartKind.Thing && IsAmount(i + 1)
            && KindAt(end) is null or PartKind.StrongBreak;
    }

    private int NextAmount(int from)
    {
        for (var i = from; i < Math.Min(from + 4, parts.Count) && KindAt(i) != PartKind.Thing; i++)
            if (IsAmount(i))
                return i;
        return -1;
    }

    private void CountOne(int i)
    {
        if (KindAt(i) == PartKind.Measure && parts[i].IsSingle && KindAt(i + 1) == PartKind.Thing && IsUncounted(i))
            parts.Insert(i, new Part(PartKind.Amount, Value: 1));
        else if (KindAt(i) == PartKind.One && KindAt(i + 1) == PartKind.Measure && !IsAmount(i + 2))
            parts[i] = new Part(PartKind.Amount, Value: 1);
        else if (KindAt(i) == PartKind.One)
            parts[i] = new Part(PartKind.Other);
    }

    /// <summary>True where neither side of a measure and the thing after it says how many.</summary>
    private bool IsUncounted(int measure) =>
        KindAt(measure - 1) is null or PartKind.And or PartKind.WeakBreak or PartKind.StrongBreak or PartKind.Have
        && KindAt(measure + 2) is not (PartKind.Amount or PartKind.Some or PartKind.Measure);

    private void Judge(int i)
    {
        if (!IsAmount(i))
            return;
        var counts = KindAt(i - 1) == PartKind.Measure || KindAt(i + 1) == PartKind.Measure;
        if (parts[i].Value >= SmallestTelephone && !counts)
            parts[i] = new Part(PartKind.Other);
        else if (parts[i] is { Value: 0, IsBad: false } && KindAt(i + 1) == PartKind.Thing
            && KindAt(i - 1) is not (PartKind.Measure or PartKind.Thing))
            parts[i] = new Part(PartKind.Absent);
        else if (parts[i].Value is <= 0 or > MostOfAMeasure)
            parts[i] = parts[i] with { IsBad = true };
    }
}
