using NodaTime;

namespace HeapText.Store.Backup;

/// <summary>What a backup holds.</summary>
/// <param name="TakenAt">When it was begun, by the clock of the store.</param>
/// <param name="Secret">Fingerprint of the secret it needs: 32 hexadecimal digits.</param>
/// <param name="Bytes">Size of the file.</param>
/// <param name="Counts">How many records of each kind: farmers, groups, words, audit, setAside, references,
/// earlyReceipts, dayCounts.</param>
public sealed record BackupSummary(
    Instant TakenAt, string Secret, long Bytes, IReadOnlyDictionary<string, long> Counts);
