namespace HeapText.Dialog.Replies;

/// <summary>Reads the list of materials from the parts of a text.</summary>
internal static class StockReader
{
    /// <param name="parts">Parts with their amounts joined.</param>
    /// <param name="isAboutHeap">
    /// True when the text reports or asks something else: then materials count only if the farmer says how much or that
    /// he has them.
    /// </param>
    public static Stock Read(List<Part> parts, bool isAboutHeap)
    {
        DropAbsent(parts);
        DropAskedAbout(parts);
        UnknownThings.Name(parts);
        if (!parts.Any(part => part.Kind == PartKind.Thing))
            return Stock.Nothing;
        var isListed = !isAboutHeap || parts.Any(part => part.IsQuantity || part.Kind == PartKind.Have);
        var things = Allotment.Of(parts);
        var refused = things.Where(thing => thing.Thing.IsRefused).Select(thing => thing.Thing.Key).Distinct();
        if (!isListed)
            return Stock.Nothing with { Refused = [.. refused] };
        var entries = things.Where(thing => !thing.Thing.IsRefused).SelectMany(Entries)
            .ToLookup(entry => entry.Material.Length > 0);
        var isUnclear = entries[false].Any() || things.Any(thing => thing.Quantity.Any(part => part.IsBad));
        return new Stock(Merge(entries[true]), [.. refused], [.. entries[false]], isUnclear);
    }

    /// <summary>"No goat manure", "sheep manure: none": not there, so not listed.</summary>
    private static void DropAbsent(List<Part> parts)
    {
        for (var i = 0; i < parts.Count; i++)
        {
            if (parts[i].Kind == PartKind.Lacking)
                DropLacking(parts, i);
            if (parts[i].Kind is not (PartKind.Absent or PartKind.Not))
                continue;
            if (!DropAhead(parts, i) && parts[i].Kind == PartKind.Absent)
                DropBehind(parts, i);
        }
    }

    private static bool DropAhead(List<Part> parts, int absent)
    {
        var found = false;
        var goesOn = true;
        for (var i = absent + 1; i < parts.Count; i++)
        {
            var kind = parts[i].Kind;
            if (kind == PartKind.Thing && goesOn)
            {
                parts[i] = new Part(PartKind.WeakBreak);
                (found, goesOn) = (true, false);
            }
            else if (kind == PartKind.Measure && !found)
                parts[i] = new Part(PartKind.Other);
            else if (found && (kind is PartKind.Or or PartKind.And or PartKind.Absent || IsBeforeElided(parts, i)))
                goesOn = parts[absent].Kind == PartKind.Absent;
            else if (found && kind == PartKind.WeakBreak && !goesOn && IsListToTheEnd(parts, i))
                goesOn = parts[absent].Kind == PartKind.Absent;
            else if (kind != PartKind.Unknown)
                break;
        }

        return found;
    }

    /// <summary>"Sina mavi ya ng'ombe, ya mbuzi": the goat's is not there either.</summary>
    private static bool IsBeforeElided(List<Part> parts, int comma) => parts[comma].Kind == PartKind.WeakBreak
        && comma + 1 < parts.Count && parts[comma + 1] is { Kind: PartKind.Thing, IsElided: true };

    /// <summary>"No dung, ash or lime": bare things up to the full stop, the last tied on with "or" or "and".</summary>
    private static bool IsListToTheEnd(List<Part> parts, int comma)
    {
        var rest = parts.Skip(comma).TakeWhile(part => part.Kind != PartKind.StrongBreak).ToList();
        return rest.Any(part => part.Kind is PartKind.Or or PartKind.And or PartKind.Absent or PartKind.Not)
            && rest.All(part => part.Kind is PartKind.Thing or PartKind.WeakBreak or PartKind.Or or PartKind.And
                or PartKind.Absent or PartKind.Not);
    }

    private static void DropBehind(List<Part> parts, int absent)
    {
        for (var i = absent - 1; i >= 0 && !parts[i].IsBreak && !parts[i].IsQuantity; i--)
        {
            if (parts[i].Kind != PartKind.Thing)
                continue;
            parts[i] = new Part(PartKind.WeakBreak);
            return;
        }
    }

    /// <summary>"Can I use plastic?", "I need 2 buckets of ash": not on hand; in "can I add ash to 2 buckets of
    /// dung" the dung is. Refused things stay, to be warned of.</summary>
    private static void DropAskedAbout(List<Part> parts)
    {
        var (isAsked, isNamed) = (false, false);
        var answered = ThingAnswered(parts);
        for (var i = 0; i < parts.Count; i++)
        {
            if (i == 0 || parts[i - 1].IsBreak)
                (isAsked, isNamed) = (IsOnlyAsked(parts.Skip(i).TakeWhile(part => !part.IsBreak)), false);
            isNamed |= isAsked && parts[i].Kind == PartKind.Thing && !(i > 0 && parts[i - 1].IsQuantity);
            if (parts[i].IsBreak || parts[i].Kind == PartKind.Have || (isNamed && parts[i].Kind == PartKind.Amount))
                isAsked = false;
            else if (parts[i].Kind == PartKind.Asking)
                isAsked = true;
            else if (isAsked && i != answered
                && (parts[i].IsQuantity || parts[i] is { Kind: PartKind.Thing, IsRefused: false }))
                parts[i] = new Part(PartKind.Other);
        }
    }

    /// <summary>"Can I use sawdust? I have 3 sacks": the place of the last thing asked about before an amount of
    /// nothing else; -1 where there is none.</summary>
    private static int ThingAnswered(List<Part> parts)
    {
        var have = parts.FindIndex(part => part.Kind == PartKind.Have);
        if (have < 1 || !parts[..have].Exists(part => part.Kind == PartKind.Asking)
            || !parts[have..].Exists(part => part.Kind == PartKind.Amount)
            || parts[have..].Exists(part => part.Kind is PartKind.Thing or PartKind.Unknown))
            return -1;
        return parts.FindLastIndex(have, part => part is { Kind: PartKind.Thing, IsRefused: false });
    }

    /// <summary>All bare things that stand together before it, tied with "and" or "or" or not at all.</summary>
    private static void DropLacking(List<Part> parts, int lacking)
    {
        for (var i = lacking - 1; i >= 0; i--)
        {
            if (parts[i].Kind == PartKind.Thing)
                parts[i] = new Part(PartKind.WeakBreak);
            else if (parts[i].Kind is not (PartKind.And or PartKind.Or or PartKind.Unknown))
                return;
        }
    }

    /// <summary>"Plastic, may I add it": asked about as well, where the question ends the clause.</summary>
    private static bool IsOnlyAsked(IEnumerable<Part> clause)
    {
        var kinds = clause.Select(part => part.Kind).ToHashSet();
        return kinds.Contains(PartKind.Asking)
            && !kinds.Overlaps([PartKind.Have, PartKind.Amount, PartKind.Some, PartKind.Measure]);
    }

    /// <summary>One entry, or one for each further whole quantity: "2 buckets and 3 sacks of cow dung".</summary>
    private static IEnumerable<ReadMaterial> Entries(Allotment thing)
    {
        var entries = new List<(Part? Amount, Part? Measure)> { (null, null) };
        foreach (var part in thing.Quantity)
        {
            var (amount, measure) = entries[^1];
            if (part.Kind == PartKind.Measure)
            {
                if (measure is null)
                    entries[^1] = (amount, part);
                else
                    entries.Add((null, part));
            }
            else if (amount is null || amount.Kind == PartKind.Some)
                entries[^1] = (part.Kind == PartKind.Some && amount is not null ? amount : part, measure);
            else if (part.Kind == PartKind.Amount)
                entries.Add((part, null));
        }

        if (entries.Skip(1).Any(IsWhole))
            entries.RemoveAll(entry => !IsWhole(entry));
        return entries.Where((entry, i) => i == 0 || IsWhole(entry))
            .Select(entry => new ReadMaterial(thing.Thing.Key, ValueOf(entry.Amount), entry.Measure?.Key)
            {
                Word = thing.Thing.Key.Length == 0 || thing.Thing.Choices.Count > 0 ? thing.Thing.Word : "",
                Choices = thing.Thing.Choices,
            });
    }

    private static bool IsWhole((Part? Amount, Part? Measure) entry) =>
        entry is { Amount: not null, Measure: not null };

    private static decimal? ValueOf(Part? amount) =>
        amount is { Kind: PartKind.Amount, IsBad: false } ? amount.Value : null;

    /// <summary>A material named first and counted later is one entry, at its first place.</summary>
    private static List<ReadMaterial> Merge(IEnumerable<ReadMaterial> materials)
    {
        var merged = new List<ReadMaterial>();
        foreach (var material in materials)
        {
            var same = merged.FindIndex(other => other.Material == material.Material
                && (IsBare(other) || IsBare(material) || other == material));
            if (same < 0)
                merged.Add(material);
            else if (IsBare(merged[same]))
                merged[same] = material;
        }

        return merged;
    }

    private static bool IsBare(ReadMaterial material) => material is { Amount: null, Measure: null };
}
