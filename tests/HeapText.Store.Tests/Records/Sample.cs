using System.Runtime.Serialization;
using NodaTime;

namespace HeapText.Store.Tests.Records;

public enum SampleKind
{
    None,
    Turned,
}

/// <summary>A record with a field of every kind that records of the dialog may have.</summary>
[DataContract]
public sealed record Sample
{
    public static readonly Sample Full = new()
    {
        Name = "Upper Ziwani é ✓",
        At = Instant.FromUtc(2026, 3, 2, 12, 0).PlusTicks(1_234_567),
        MaybeAt = Instant.FromUtc(1969, 12, 31, 23, 59),
        Date = new LocalDate(2026, 2, 28),
        MaybeDate = new LocalDate(1960, 2, 29),
        Time = new LocalTime(23, 59, 59).PlusTicks(1),
        Kind = SampleKind.Turned,
        Amount = 12.50m,
        Share = 0.1,
        Count = -7,
        MaybeCount = int.MaxValue,
        Flag = true,
        Parts = [new SamplePart("goat-manure", 2.5m), new SamplePart("rice-straw", 10m)],
        Days = [new LocalDate(2026, 3, 9), new LocalDate(2026, 3, 16)],
        Counts = new Dictionary<string, int> { ["a"] = 1 },
        Part = new SamplePart("lantana", null),
    };

    [DataMember(Order = 0)] public required string Name { get; init; }
    [DataMember(Order = 1)] public Instant At { get; init; }
    [DataMember(Order = 2)] public Instant? MaybeAt { get; init; }
    [DataMember(Order = 3)] public LocalDate Date { get; init; } = new(2000, 1, 1);
    [DataMember(Order = 4)] public LocalDate? MaybeDate { get; init; }
    [DataMember(Order = 5)] public LocalTime Time { get; init; }
    [DataMember(Order = 6)] public SampleKind Kind { get; init; }
    [DataMember(Order = 7)] public decimal Amount { get; init; }
    [DataMember(Order = 8)] public double Share { get; init; }
    [DataMember(Order = 9)] public int Count { get; init; }
    [DataMember(Order = 10)] public int? MaybeCount { get; init; }
    [DataMember(Order = 11)] public bool Flag { get; init; }
    [DataMember(Order = 12)] public IReadOnlyList<SamplePart> Parts { get; init; } = [];
    [DataMember(Order = 14)] public IReadOnlyList<LocalDate> Days { get; init; } = [];
    [DataMember(Order = 15)] public Dictionary<string, int> Counts { get; init; } = [];
    [DataMember(Order = 16)] public SamplePart? Part { get; init; }

    public string NotStored => Name;

    public static void AssertEqual(Sample expected, Sample actual)
    {
        Assert.Equal(expected.Parts, actual.Parts);
        Assert.Equal(expected.Days, actual.Days);
        Assert.Equal(expected.Counts, actual.Counts);
        Assert.Equal(expected, actual with { Parts = expected.Parts, Days = expected.Days, Counts = expected.Counts });
    }
}

/// <summary>A part as a record with a constructor.</summary>
[DataContract]
public sealed record SamplePart(
    [property: DataMember(Order = 0)] string Material, [property: DataMember(Order = 1)] decimal? Amount);

[DataContract]
public sealed record EarlierSample
{
    [DataMember(Order = 0)] public required string Name { get; init; }
}

[DataContract]
public sealed record LaterSample
{
    [DataMember(Order = 0)] public required string Name { get; init; }
    [DataMember(Order = 1)] public string Added { get; init; } = "usual";
    [DataMember(Order = 2)] public IReadOnlyList<int> List { get; init; } = [];
}
