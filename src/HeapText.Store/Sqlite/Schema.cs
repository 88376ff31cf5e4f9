using System.Globalization;
using System.Reflection;
using HeapText.Store.Numbers;

namespace HeapText.Store.Sqlite;

/// <summary>Brings a database file to the layout this program knows.</summary>
internal static class Schema
{
    /// <summary>The layout this program knows: the number of its last migration.</summary>
    public static int Version => Migrations().Count;

    /// <summary>Sets how the file is written and runs the migrations it lacks, each in a transaction.</summary>
    /// <exception cref="InvalidDataException">A newer version of this program wrote the file, or the secret is not
    /// the one it was made with.</exception>
    public static void Prepare(Session session, NumberVault vault)
    {
        session.Script("PRAGMA journal_mode = WAL; PRAGMA synchronous = FULL; PRAGMA wal_autocheckpoint = 2000;");
        var present = Convert.ToInt32(session.Scalar("PRAGMA user_version"), CultureInfo.InvariantCulture);
        var migrations = Migrations();
        if (present > migrations.Count)
            throw new InvalidDataException(
                $"The store has layout {present}; this version knows {Version}. Install the newer version again.");
        for (var next = present; next < migrations.Count; next++)
            session.Script($"BEGIN IMMEDIATE; {migrations[next]}; PRAGMA user_version = {next + 1}; COMMIT;");
        CheckSecret(session, vault);
    }

    /// <summary>Checks that the file can be written as it is.</summary>
    /// <exception cref="InvalidDataException">Another version of this program wrote the file, or the secret is not
    /// the one it was made with.</exception>
    public static void Check(Session session, NumberVault vault)
    {
        session.Script("PRAGMA synchronous = FULL;");
        var present = Convert.ToInt32(session.Scalar("PRAGMA user_version"), CultureInfo.InvariantCulture);
        if (present != Version)
            throw new InvalidDataException(
                $"The store has layout {present}; this version needs {Version}. Start the service of this version.");
        CheckSecret(session, vault);
    }

    private static void CheckSecret(Session session, NumberVault vault)
    {
        var written = session.Scalar(Tables.Meta.Get, Tables.Meta.Fingerprint) as byte[];
        if (written is null) session.Run(Tables.Meta.Put, Tables.Meta.Fingerprint, vault.Fingerprint);
        else if (!written.AsSpan().SequenceEqual(vault.Fingerprint))
            throw new InvalidDataException(
                "Store:Secret is not what this store was made with: its numbers could not be read. Set the old one.");
    }

    /// <summary>The scripts, first to last.</summary>
    internal static IReadOnlyList<string> Migrations()
    {
        var assembly = Assembly.GetExecutingAssembly();
        return [.. assembly.GetManifestResourceNames()
            .Where(name => name.EndsWith(".sql", StringComparison.Ordinal))
            .Order(StringComparer.Ordinal)
            .Select(name =>
            {
                using var reader = new StreamReader(assembly.GetManifestResourceStream(name)!);
                return reader.ReadToEnd();
            })];
    }
}
