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
}

/// <summary>One frame of a backup.</summary>
internal readonly record struct BackupFrame(BackupKind Kind, byte[] Packed);
