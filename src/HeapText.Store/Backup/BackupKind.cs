namespace HeapText.Store.Backup;

/// <summary>What a frame of a backup holds. The numbers are part of the format.</summary>
internal enum BackupKind : byte
{
    /// <summary>The last frame: how many there were of each kind.</summary>
    End = 0,

    /// <summary>A packed <see cref="FarmerCopy"/>.</summary>
    Farmer = 1,

    /// <summary>A packed group, as it is stored.</summary>
    Group = 2,

    /// <summary>A packed own word, as it is stored.</summary>
    OwnWord = 3,

    /// <summary>A packed audit entry, as it is stored; oldest first.</summary>
    Audit = 4,

    /// <summary>A packed message given up, as it is stored; oldest first.</summary>
    SetAside = 5,

    /// <summary>A packed <see cref="ReferenceCopy"/>; after the farmers.</summary>
    Reference = 6,

    /// <summary>A packed <see cref="EarlyReceiptCopy"/>.</summary>
    EarlyReceipt = 7,

    /// <summary>A packed <see cref="SpendingCopy"/>.</summary>
    Spending = 8,
}

/// <summary>One frame of a backup.</summary>
internal readonly record struct BackupFrame(BackupKind Kind, byte[] Packed);

/// <summary>What the kinds are called outside.</summary>
internal static class BackupKinds
{
    /// <summary>Every kind of record, with the name its count goes by.</summary>
    public static readonly IReadOnlyDictionary<BackupKind, string> Names = new Dictionary<BackupKind, string>
    {
        [BackupKind.Farmer] = "farmers",
        [BackupKind.Group] = "groups",
        [BackupKind.OwnWord] = "words",
        [BackupKind.Audit] = "audit",
        [BackupKind.SetAside] = "setAside",
        [BackupKind.Reference] = "references",
        [BackupKind.EarlyReceipt] = "earlyReceipts",
        [BackupKind.Spending] = "dayCounts",
    };
}
