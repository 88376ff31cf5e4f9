namespace HeapText.Store.Sqlite;

/// <summary>Every statement that only backups need; the others stand in <see cref="Tables"/>.</summary>
internal static class BackupTables
{
    /// <summary>→ id, key, version, number, record, due, group, concern.</summary>
    public const string Farmers = """
        SELECT id, key, version, number, record, due, village, concern_since FROM farmer ORDER BY id
        """;

    /// <summary>key, version, number, record, due, group, concern → id; nothing when the farmer is there.</summary>
    public const string AddFarmer = """
        INSERT INTO farmer (key, version, number, record, due, village, concern_since)
        VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7) ON CONFLICT (key) DO NOTHING RETURNING id
        """;

    /// <summary>key → id.</summary>
    public const string FarmerId = "SELECT id FROM farmer WHERE key = ?1";

    /// <summary>farmer → mark, at.</summary>
    public const string Seen = "SELECT mark, at FROM seen WHERE farmer = ?1";

    /// <summary>farmer → mark, at, screen.</summary>
    public const string Answers = "SELECT mark, at, screen FROM answer WHERE farmer = ?1";

    /// <summary>farmer → id, line, priority, not_before, tries, message, as they go out.</summary>
    public const string Outbox = """
        SELECT id, line, priority, not_before, tries, message FROM outbox WHERE farmer = ?1
        ORDER BY ready_at IS NULL, not_before, seq
        """;

    /// <summary>farmer, id, line, priority, not_before, tries, ready_at, message.</summary>
    public const string AddToOutbox = """
        INSERT INTO outbox (farmer, id, line, priority, not_before, tries, ready_at, message)
        VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8)
        """;

    /// <summary>farmer → at, entry.</summary>
    public const string Sent = "SELECT at, entry FROM sent WHERE farmer = ?1";

    /// <summary>→ entry.</summary>
    public const string Groups = "SELECT entry FROM village_group ORDER BY code";

    /// <summary>→ entry.</summary>
    public const string OwnWords = "SELECT entry FROM own_word ORDER BY district, word";

    /// <summary>→ entry, oldest first.</summary>
    public const string Audits = "SELECT entry FROM audit ORDER BY seq";

    /// <summary>→ entry, oldest first.</summary>
    public const string SetAside = "SELECT entry FROM set_aside ORDER BY seq";

    /// <summary>→ mark, key of the farmer, tail, part, at.</summary>
    public const string References = """
        SELECT mark, key, tail, part, reference.at FROM reference JOIN farmer ON farmer.id = reference.farmer
        """;

    /// <summary>→ mark, state, state at, at.</summary>
    public const string EarlyReceipts = "SELECT mark, state, state_at, at FROM early_receipt";

    /// <summary>→ day, line, segments.</summary>
    public const string Spending = "SELECT day, line, segments FROM spending";

    /// <summary>→ whether there is any record that was not put in by the making of the file.</summary>
    public const string Any = """
        SELECT EXISTS (SELECT 1 FROM farmer) OR EXISTS (SELECT 1 FROM village_group)
            OR EXISTS (SELECT 1 FROM audit)
        """;
}
