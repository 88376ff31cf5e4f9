namespace HeapText.Agronomy.Heap;

/// <summary>What to do on an urgent sign: people first, then the fire, and a person is told.</summary>
/// <remarks>
/// Do not open a smouldering heap, more air feeds the fire [NMCOMPOSTERS]. Fever or cough after turning: clinic
/// [GARDENBOX]. Cooling a burn for 20 minutes: common first aid advice, from memory. Smoke may be steam; a heap that
/// steams loses nothing by being left alone. The rest: common practice, no source.
/// </remarks>
public static class UrgentAdvice
{
    // First aid before the way to the clinic, and the officer once nobody needs a hand.
    private static readonly string[] InOrder =
    [
        HeapActions.CoolBurn, HeapActions.GoToClinic, HeapActions.DoNotOpen, HeapActions.KeepAway,
        HeapActions.DoNotUse, HeapActions.CallOfficer,
    ];

    /// <summary>Cause and actions of each sign.</summary>
    public static IReadOnlyDictionary<UrgentSign, (Finding Finding, IReadOnlyList<string> Actions)> Of { get; } =
        new Dictionary<UrgentSign, (Finding, IReadOnlyList<string>)>
        {
            [UrgentSign.BadlyHurt] = (new(HeapCauses.Hurt, Confidence.High),
                [HeapActions.GoToClinic, HeapActions.CallOfficer]),
            [UrgentSign.Burn] = (new(HeapCauses.Burn, Confidence.High),
                [HeapActions.CoolBurn, HeapActions.GoToClinic]),
            [UrgentSign.SickPerson] = (new(HeapCauses.SickPerson, Confidence.High),
                [HeapActions.GoToClinic, HeapActions.CallOfficer]),
            [UrgentSign.Smouldering] = (new(HeapCauses.Fire, Confidence.High),
                [HeapActions.DoNotOpen, HeapActions.KeepAway, HeapActions.CallOfficer]),
            [UrgentSign.Smoke] = (new(HeapCauses.Fire, Confidence.Medium),
                [HeapActions.DoNotOpen, HeapActions.KeepAway, HeapActions.CallOfficer]),
            [UrgentSign.Poison] = (new(HeapCauses.Poison, Confidence.Medium),
                [HeapActions.DoNotUse, HeapActions.CallOfficer]),
        };

    /// <summary>The diagnosis of one or more signs, most pressing first; nothing else is said.</summary>
    internal static Diagnosis For(IReadOnlyCollection<UrgentSign> signs)
    {
        var found = signs.Distinct().Order().Select(sign => Of[sign]).ToList();
        return new Diagnosis
        {
            Findings = [.. found.Select(one => one.Finding).DistinctBy(finding => finding.Cause)],
            Actions = [.. InOrder.Intersect(found.SelectMany(one => one.Actions))],
            IsUrgent = true,
            NeedsPerson = true,
            NextCheckDays = 1,
        };
    }
}
