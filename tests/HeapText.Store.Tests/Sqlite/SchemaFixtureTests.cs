using System.Globalization;
using HeapText.Dialog.Engine;
using HeapText.Dialog.Ports;
using HeapText.Store.Numbers;
using HeapText.Store.Records;
using HeapText.Store.Sqlite;
using HeapText.Store.Tests.Backup;
using HeapText.Store.Tests.Records;

namespace HeapText.Store.Tests.Sqlite;

/// <summary>A database file of each layout ever released, made by the migrations up to it, opens and is brought
/// up.</summary>
public sealed class SchemaFixtureTests
{
    private const string Folder = "databases";
    private const string Extension = ".sqlite";
    private static readonly TimeSpan LockWait = TimeSpan.FromSeconds(1);
    private static readonly NumberVault Vault = new(Convert.FromBase64String(Home.Secret));

    private static readonly Outbound Message = new(
        "s1-1", "lake", "text", Priority.Reply, Season.Noon, Season.Noon + NodaTime.Duration.FromDays(1));

    public static TheoryData<int> Layouts => [.. Enumerable.Range(1, Schema.Version)];

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Theory]
    [MemberData(nameof(Layouts))]
    public async Task Open_DatabaseOfEachLayout_IsBroughtUpWithAllItHolds(int layout)
    {
        await using var home = await Home.New(Home.Embedded);
        File.Copy(FixtureOf(layout), home.DatabaseFile);

        await using var store = await home.Open(Season.ClockAt(Season.Noon));
        await AssertHolds(store, layout);
    }

    [Theory]
    [MemberData(nameof(Layouts))]
    public async Task Backup_OfEachLayout_IsOfThisOneAndLeavesTheStoreAsItIs(int layout)
    {
        await using var home = await Home.New(Home.Embedded);
        await using var target = await Home.New(Home.Embedded);
        File.Copy(FixtureOf(layout), home.DatabaseFile);
        var file = home.DatabaseFile + ".heaptext";

        await home.Take(file, Season.ClockAt(Season.Noon));
        await target.Restore(file);

        using (var session = Session.Open(home.DatabaseFile, LockWait))
            Assert.Equal((long)layout, session.Scalar("PRAGMA user_version"));
        await using var store = await target.Open(Season.ClockAt(Season.Noon));
        await AssertHolds(store, layout);
    }

    /// <summary>A migration that was released is never edited: stores that ran it would lack what it says.</summary>
    [Theory]
    [MemberData(nameof(Layouts))]
    public void Migrations_UpToEachLayout_MakeWhatTheyMadeWhenItWasReleased(int layout)
    {
        var made = Path.GetTempFileName();
        try
        {
            Make(made, layout);
            Assert.Equal(Definitions(FixtureOf(layout)), Definitions(made));
        }
        finally
        {
            File.Delete(made);
        }
    }

    private static string FixtureOf(int layout)
    {
        var name = string.Create(CultureInfo.InvariantCulture, $"layout-{layout:D3}");
        if (FixtureFiles.Accepts && FixtureFiles.Of(Folder, name, Extension) is [])
        {
            var made = Path.GetTempFileName();
            Make(made, layout);
            FixtureFiles.Add(Folder, name, Extension, File.ReadAllBytes(made));
            File.Delete(made);
        }
        var files = FixtureFiles.Of(Folder, name, Extension);
        Assert.True(files.Count == 1, FixtureFiles.Missing($"Migration {layout}"));
        return files[0];
    }

    private static List<string> Definitions(string file)
    {
        var copy = Path.GetTempFileName();
        File.Copy(file, copy, overwrite: true);
        using (var session = Session.Open(copy, LockWait))
        {
            var definitions = new List<string>();
            using (var rows = session.Rows("SELECT sql FROM sqlite_schema WHERE sql IS NOT NULL ORDER BY name"))
                while (rows.Read()) definitions.Add(rows.GetString(0));
            File.Delete(copy);
            return definitions;
        }
    }

    /// <summary>Makes a database of a layout, with a row in each of its tables.</summary>
    private static void Make(string file, int layout)
    {
        using var session = Session.Open(file, LockWait);
        session.Script("PRAGMA page_size = 512;");
        foreach (var migration in Schema.Migrations().Take(layout)) session.Script(migration);
        session.Script($"PRAGMA user_version = {layout};");
        session.Run("INSERT INTO meta (name, value) VALUES ('fingerprint', ?1)", Vault.Fingerprint);
        foreach (var rows in Rows.Take(layout)) rows(session);
    }

    /// <summary>What each layout brought: the rows of its new tables.</summary>
    private static readonly Action<Session>[] Rows =
    [
        session =>
        {
            var number = Season.Number(1);
            var key = Vault.KeyOf(number);
            var farmer = new Farmer { Subject = "s1", Line = "lake", Group = 41 };
            session.Run(
                """
                INSERT INTO farmer (id, key, version, number, record, due, village, concern_since)
                VALUES (1, ?1, 2, ?2, ?3, ?4, 41, NULL)
                """,
                Convert.FromHexString(key.Hash), Vault.Seal(key, number), RecordFormat.Pack(farmer), At);
            session.Run("INSERT INTO seen VALUES (1, ?1, ?2)", Mark, At);
            session.Run(
                "INSERT INTO outbox VALUES (1, 1, 's1-1', 'lake', 0, ?1, 0, ?1, ?2)", At, RecordFormat.Pack(Message));
            var aside = new SetAsideEntry(key, Season.Noon, "refused", Message);
            session.Run("INSERT INTO set_aside VALUES (1, 1, ?1)", RecordFormat.Pack(aside));
            var group = new Group(41, "Upper Ziwani", "en", "Africa/Nairobi", "Trainer");
            session.Run("INSERT INTO village_group VALUES (41, ?1)", RecordFormat.Pack(group));
            var audit = new AuditEntry(Season.Noon, "office", "did", "41");
            session.Run("INSERT INTO audit VALUES (1, ?1)", RecordFormat.Pack(audit));
        },
        session => session.Run(
            "INSERT INTO own_word VALUES ('41', 'mbondo', ?1)",
            RecordFormat.Pack(new OwnWord("41", "mbondo", "sw", null))),
        session => session.Run(
            "INSERT INTO answer VALUES (1, ?1, ?2, ?3)", Mark, At, RecordFormat.Pack(new Screen("1 yes", Open: true))),
        session =>
        {
            var entry = new SentEntry("-0", "lake", Priority.Reply, Segments: 1, Parts: 1);
            session.Run(
                "INSERT INTO sent VALUES (1, '-0', ?1, ?2)", Season.Noon.ToUnixTimeSeconds(), RecordFormat.Pack(entry));
            session.Run("INSERT INTO reference VALUES (?1, 1, '-0', 0, ?2)", Vault.MarkOf("lake", "r-0"), At);
            session.Run("INSERT INTO early_receipt VALUES (?1, 0, ?2, ?2)", Vault.MarkOf("lake", "s1-1"), At);
        },
        session => session.Run("INSERT INTO spending VALUES ('2026-03-02', 'lake', 7)"),
    ];

    private static long At => Season.Noon.ToUnixTimeMilliseconds();

    private static byte[] Mark => Vault.MarkOf(new SeenId("lake", "in-1"));

    private static async Task AssertHolds(IStore store, int layout)
    {
        var key = store.KeyOf(Season.Number(1));
        var start = await store.Begin(key, new SeenId("lake", "in-1"), Season.Noon, Cancel);
        Assert.Equal("s1", start.Farmer!.Subject);
        Assert.Equal((2, Season.Number(1), true), (start.Version, start.Number, start.Seen));
        Assert.Equal(key, Assert.Single(await store.Members(41, Cancel)));
        Assert.Single(await store.Groups(Cancel));
        Assert.Single(await store.AuditTrail(9, Cancel));
        Assert.Equal(Season.Number(1), Assert.Single(await store.SetAside(9, Cancel)).To);
        var lease = NodaTime.Duration.FromMinutes(1);
        Assert.Equal(key, Assert.Single(await store.ClaimDue(Season.Noon, lease, 9, Cancel)));
        var sending = Assert.Single(await store.TakeNext("lake", Priority.Notice, Season.Noon, lease, 9, Cancel));
        Assert.Equal(Message, sending.Message);

        Assert.Equal(layout >= 2 ? 1 : 0, (await store.OwnWords(Cancel)).Count);
        Assert.Equal(layout >= 3 ? "1 yes" : null, start.Answer?.Text);
        await store.Settle(sending, new Settlement.Sent([]), Cancel);
        var receipt = new Receipt("lake", "r-0", DeliveryState.Delivered, Season.Noon);
        Assert.Equal(
            layout >= 4 ? NoteOutcome.Noted : NoteOutcome.Early, await store.Note(receipt, Season.Noon, Cancel));
        Assert.Equal(layout >= 4 ? 2 : 0, (await store.Sent(key, Cancel)).Count(one => one.State is not null));
        var budget = new LineBudget("lake", 100, 10, null, NodaTime.DateTimeZone.Utc);
        var allowed = await store.Allow(budget, [new Load(Priority.Reply, 4)], Season.Noon, Cancel);
        Assert.Equal(layout >= 5 ? 0 : 1, allowed.Granted);
    }
}
