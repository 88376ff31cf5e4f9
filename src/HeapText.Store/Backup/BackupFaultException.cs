namespace HeapText.Store.Backup;

/// <summary>A backup cannot be taken or put back. The message says in one line why, and what to do.</summary>
public sealed class BackupFaultException(string message, Exception? inner = null) : Exception(message, inner);
