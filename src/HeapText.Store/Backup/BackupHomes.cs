namespace HeapText.Store.Backup;

/// <summary>A home whose whole state can be read beside a running service.</summary>
internal interface IBackupSource : IAsyncDisposable
{
    /// <summary>Every record: farmers before references.</summary>
    IAsyncEnumerable<BackupFrame> Read(CancellationToken cancel);
}

/// <summary>A home that is filled from a backup. Nothing is served from it before <see cref="Finish"/>.</summary>
internal interface IBackupTarget : IAsyncDisposable
{
    /// <summary>True when something would be lost by filling it.</summary>
    ValueTask<bool> HoldsRecords(CancellationToken cancel);

    /// <summary>Makes it ready to be filled. What is there is gone, or will be with <see cref="Finish"/>.</summary>
    ValueTask Clear(CancellationToken cancel);

    /// <summary>Puts a record in. May complete before it is durable.</summary>
    ValueTask Add(BackupFrame frame);

    /// <summary>Makes all of it durable, and lets it be served.</summary>
    ValueTask Finish();
}
