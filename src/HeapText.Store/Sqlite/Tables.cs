namespace HeapText.Store.Sqlite;

/// <summary>Every statement of the embedded store: no table or column is spelled elsewhere but in the migrations,
/// which say what each holds, and in <see cref="BackupTables"/>.</summary>
internal static class Tables
{
    public static class Meta
    {
        public const string Fingerprint = "fingerprint";
        public const string Get = "SELECT value FROM meta WHERE name = ?1";
        public const string Put = "INSERT INTO meta (name, value) VALUES (?1, ?2)";
    }

    public static class Farmers
    {
        /// <summary>key, mark, oldest mark and oldest answer that count → version, number, record, whether the mark
        /// was seen, the screen it was answered with.</summary>
        public const string Begin = """
            SELECT version, number, record,
                   EXISTS (SELECT 1 FROM seen WHERE seen.farmer = farmer.id AND mark = ?2 AND at >= ?3),
                   (SELECT screen FROM answer WHERE answer.farmer = farmer.id AND mark = ?2 AND at >= ?4)
            FROM farmer WHERE key = ?1
            """;

        /// <summary>key, mark, oldest mark that counts → id, version, whether the mark was seen.</summary>
        public const string Check = """
            SELECT id, version, EXISTS (SELECT 1 FROM seen WHERE seen.farmer = farmer.id AND mark = ?2 AND at >= ?3)
            FROM farmer WHERE key = ?1
            """;

        /// <summary>number, record, due, group, concern, key → id.</summary>
        public const string Add = """
            INSERT INTO farmer (number, record, due, village, concern_since, key, version)
            VALUES (?1, ?2, ?3, ?4, ?5, ?6, 1) RETURNING id
            """;

        /// <summary>number, record, due, group, concern, id.</summary>
        public const string Change = """
            UPDATE farmer
            SET number = ?1, record = ?2, due = ?3, village = ?4, concern_since = ?5, version = version + 1
            WHERE id = ?6
            """;

        /// <summary>now, most → id, key.</summary>
        public const string Due = """
            SELECT id, key FROM farmer WHERE due IS NOT NULL AND due <= ?1 ORDER BY due LIMIT ?2
            """;

        /// <summary>id, end of the claim.</summary>
        public const string Claim = "UPDATE farmer SET due = ?2 WHERE id = ?1";

        /// <summary>group → key.</summary>
        public const string OfGroup = "SELECT key FROM farmer WHERE village = ?1";

        /// <summary>most → key, number, record.</summary>
        public const string WithConcern = """
            SELECT key, number, record FROM farmer WHERE concern_since IS NOT NULL ORDER BY concern_since LIMIT ?1
            """;

        /// <summary>now, the latest end of a claim: gives back what a process that is gone had claimed.</summary>
        public const string Release = "UPDATE farmer SET due = ?1 WHERE due > ?1 AND due <= ?2";

        /// <summary>→ earliest instant at which something is due or may be sent.</summary>
        public const string NextWake = """
            SELECT MIN(at) FROM (
              SELECT MIN(due) AS at FROM farmer WHERE due IS NOT NULL
              UNION ALL SELECT MIN(ready_at) FROM outbox WHERE ready_at IS NOT NULL)
            """;

        /// <summary>→ whether there is any farmer or group.</summary>
        public const string Any = "SELECT EXISTS (SELECT 1 FROM farmer) OR EXISTS (SELECT 1 FROM village_group)";
    }

    public static class Seen
    {
        /// <summary>farmer, mark, at.</summary>
        public const string Put = """
            INSERT INTO seen (farmer, mark, at) VALUES (?1, ?2, ?3)
            ON CONFLICT (farmer, mark) DO UPDATE SET at = excluded.at
            """;

        /// <summary>One commit in so many trims.</summary>
        public const int TrimEvery = 16;

        /// <summary>oldest mark that counts. Takes twice as many as came since, so the table cannot grow without end.
        /// </summary>
        public const string Trim = """
            DELETE FROM seen WHERE (farmer, mark) IN (
              SELECT farmer, mark FROM seen WHERE at < ?1 ORDER BY at LIMIT 32)
            """;
    }

    public static class Answers
    {
        /// <summary>farmer, mark, at, screen.</summary>
        public const string Put = """
            INSERT INTO answer (farmer, mark, at, screen) VALUES (?1, ?2, ?3, ?4)
            ON CONFLICT (farmer, mark) DO UPDATE SET at = excluded.at, screen = excluded.screen
            """;

        /// <summary>oldest answer that counts. Takes more than came since.</summary>
        public const string Trim = """
            DELETE FROM answer WHERE (farmer, mark) IN (
              SELECT farmer, mark FROM answer WHERE at < ?1 ORDER BY at LIMIT 2)
            """;
    }

    public static class Outbox
    {
        /// <summary>farmer → seq, tries, not_before of the head.</summary>
        public const string Head = """
            SELECT seq, tries, not_before FROM outbox WHERE farmer = ?1 AND ready_at IS NOT NULL
            """;

        /// <summary>farmer, id, line, priority, not_before, ready_at, message.</summary>
        public const string Add = """
            INSERT INTO outbox (farmer, id, line, priority, not_before, ready_at, message)
            VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7)
            """;

        /// <summary>seq: no longer the head.</summary>
        public const string Demote = "UPDATE outbox SET ready_at = NULL WHERE seq = ?1";

        /// <summary>farmer: makes the next message the head, when there is one.</summary>
        public const string Promote = """
            UPDATE outbox SET ready_at = not_before
            WHERE seq = (SELECT seq FROM outbox WHERE farmer = ?1 ORDER BY not_before, seq LIMIT 1)
            """;

        /// <summary>line, priority, now, most → seq, tries, message, key, number.</summary>
        public const string Ready = """
            SELECT seq, tries, message, key, number FROM outbox JOIN farmer ON farmer.id = outbox.farmer
            WHERE line = ?1 AND priority = ?2 AND ready_at IS NOT NULL AND ready_at <= ?3 ORDER BY ready_at LIMIT ?4
            """;

        /// <summary>seq, end of the lease.</summary>
        public const string Lease = "UPDATE outbox SET ready_at = ?2, tries = tries + 1 WHERE seq = ?1";

        /// <summary>key, id → seq, tries, farmer: the message when it was taken and is not settled.</summary>
        public const string Taken = """
            SELECT seq, tries, farmer FROM outbox
            WHERE farmer = (SELECT id FROM farmer WHERE key = ?1) AND ready_at IS NOT NULL AND tries > 0 AND id = ?2
            """;

        /// <summary>now: gives back all that was taken, postponed or put back.</summary>
        public const string Release = """
            UPDATE outbox SET ready_at = MAX(?1, IIF(tries > 0, 0, not_before))
            WHERE ready_at > ?1 AND (tries > 0 OR ready_at > not_before)
            """;

        /// <summary>line, now, moment: gives back what was taken, postponed or put back to after that moment.</summary>
        public const string GiveBack = """
            UPDATE outbox SET ready_at = MAX(?2, IIF(tries > 0, 0, not_before))
            WHERE line = ?1 AND ready_at > ?3 AND (tries > 0 OR ready_at > not_before)
            """;

        /// <summary>seq, at: as if it had not been taken.</summary>
        public const string PutBack = "UPDATE outbox SET ready_at = ?2, tries = tries - 1 WHERE seq = ?1";

        /// <summary>seq, at.</summary>
        public const string Postpone = "UPDATE outbox SET ready_at = ?2 WHERE seq = ?1";

        /// <summary>seq.</summary>
        public const string Remove = "DELETE FROM outbox WHERE seq = ?1";
    }

    public static class Spending
    {
        /// <summary>day, line ('' for all) → segments.</summary>
        public const string Get = "SELECT segments FROM spending WHERE day = ?1 AND line = ?2";

        /// <summary>day, line ('' for all), segments.</summary>
        public const string Add = """
            INSERT INTO spending (day, line, segments) VALUES (?1, ?2, ?3)
            ON CONFLICT (day, line) DO UPDATE SET segments = segments + excluded.segments
            """;

        /// <summary>day, line ('' for all), segments.</summary>
        public const string TakeOff = "UPDATE spending SET segments = segments - ?3 WHERE day = ?1 AND line = ?2";

        /// <summary>oldest day that counts.</summary>
        public const string Trim = "DELETE FROM spending WHERE day < ?1";
    }

    public static class SetAside
    {
        /// <summary>How many are kept.</summary>
        public const int Kept = 10_000;

        /// <summary>farmer, entry.</summary>
        public const string Add = "INSERT INTO set_aside (farmer, entry) VALUES (?1, ?2)";

        /// <summary>how many are kept.</summary>
        public const string Trim = "DELETE FROM set_aside WHERE seq <= (SELECT MAX(seq) FROM set_aside) - ?1";

        /// <summary>most → entry, number, newest first.</summary>
        public const string Newest = """
            SELECT entry, number FROM set_aside JOIN farmer ON farmer.id = set_aside.farmer
            ORDER BY seq DESC LIMIT ?1
            """;
    }

    public static class Sent
    {
        /// <summary>farmer, tail of the id, at, entry.</summary>
        public const string Put = "INSERT OR REPLACE INTO sent (farmer, tail, at, entry) VALUES (?1, ?2, ?3, ?4)";

        /// <summary>farmer, tail → entry, at.</summary>
        public const string Get = "SELECT entry, at FROM sent WHERE farmer = ?1 AND tail = ?2";

        /// <summary>farmer, tail, entry.</summary>
        public const string Change = "UPDATE sent SET entry = ?3 WHERE farmer = ?1 AND tail = ?2";

        /// <summary>key, oldest → entry, record of the farmer, at, newest first.</summary>
        public const string OfFarmer = """
            SELECT entry, record, at FROM sent JOIN farmer ON farmer.id = sent.farmer WHERE key = ?1 AND at >= ?2
            ORDER BY at DESC, LENGTH(tail) DESC, tail DESC
            """;

        /// <summary>farmer, how many are kept.</summary>
        public const string TrimFarmer = """
            DELETE FROM sent WHERE farmer = ?1 AND tail NOT IN (
              SELECT tail FROM sent WHERE farmer = ?1 ORDER BY at DESC, LENGTH(tail) DESC, tail DESC LIMIT ?2)
            """;

        /// <summary>oldest that counts. Takes more than came since.</summary>
        public const string Trim = """
            DELETE FROM sent WHERE (farmer, tail) IN (SELECT farmer, tail FROM sent WHERE at < ?1 ORDER BY at LIMIT 2)
            """;
    }

    public static class References
    {
        /// <summary>mark, farmer, tail, part, at.</summary>
        public const string Put =
            "INSERT OR REPLACE INTO reference (mark, farmer, tail, part, at) VALUES (?1, ?2, ?3, ?4, ?5)";

        /// <summary>mark, oldest → farmer, tail, part.</summary>
        public const string Get = "SELECT farmer, tail, part FROM reference WHERE mark = ?1 AND at >= ?2";

        /// <summary>oldest that counts. Takes more than came since.</summary>
        public const string Trim = """
            DELETE FROM reference WHERE mark IN (SELECT mark FROM reference WHERE at < ?1 ORDER BY at LIMIT 2)
            """;
    }

    public static class EarlyReceipts
    {
        /// <summary>mark, state, state at, at, whether delivered: that beats what is kept, nothing else does.</summary>
        public const string Put = """
            INSERT INTO early_receipt (mark, state, state_at, at) VALUES (?1, ?2, ?3, ?4)
            ON CONFLICT (mark) DO UPDATE SET state = excluded.state, state_at = excluded.state_at, at = excluded.at
            WHERE ?5
            """;

        /// <summary>mark, oldest → state, state at.</summary>
        public const string Get = "SELECT state, state_at FROM early_receipt WHERE mark = ?1 AND at >= ?2";

        /// <summary>oldest that counts. Takes more than came since.</summary>
        public const string Trim = """
            DELETE FROM early_receipt WHERE mark IN (SELECT mark FROM early_receipt WHERE at < ?1 ORDER BY at LIMIT 2)
            """;
    }

    public static class Groups
    {
        /// <summary>code, entry.</summary>
        public const string Put = "INSERT OR REPLACE INTO village_group (code, entry) VALUES (?1, ?2)";

        /// <summary>→ entry, by code.</summary>
        public const string All = "SELECT entry FROM village_group ORDER BY code";
    }

    public static class OwnWords
    {
        /// <summary>district, word, entry.</summary>
        public const string Put = "INSERT OR REPLACE INTO own_word (district, word, entry) VALUES (?1, ?2, ?3)";

        /// <summary>→ entry, by district and word.</summary>
        public const string All = "SELECT entry FROM own_word ORDER BY district, word";
    }

    public static class Audits
    {
        /// <summary>entry.</summary>
        public const string Add = "INSERT INTO audit (entry) VALUES (?1)";

        /// <summary>most → entry, newest first.</summary>
        public const string Newest = "SELECT entry FROM audit ORDER BY seq DESC LIMIT ?1";
    }
}
