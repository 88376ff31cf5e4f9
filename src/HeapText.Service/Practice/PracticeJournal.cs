using System.Threading.Channels;
using Microsoft.Data.Sqlite;
using NodaTime;
using NodaTime.Text;

namespace HeapText.Service.Practice;

/// <summary>What the practice gateway keeps, in a file of its own: messages both ways, and the clock's
/// offset.</summary>
internal sealed class PracticeJournal : IAsyncDisposable
{
    /// <summary>Name of the file in the data folder.</summary>
    public const string FileName = "practice.db";

    private const int MostAtOnce = 256;
    private const int MostWaiting = 4096;

    private const string Schema = """
        PRAGMA journal_mode=WAL;
        CREATE TABLE IF NOT EXISTS messages (
            n INTEGER PRIMARY KEY AUTOINCREMENT,
            way TEXT NOT NULL CHECK (way IN ('in', 'out')),
            number TEXT NOT NULL,
            id TEXT NOT NULL,
            text TEXT NOT NULL,
            encoding TEXT NOT NULL,
            segments INTEGER NOT NULL,
            at TEXT NOT NULL,
            UNIQUE (way, id, number));
        CREATE INDEX IF NOT EXISTS messages_by_number ON messages (number, n);
        CREATE TABLE IF NOT EXISTS clock (one INTEGER PRIMARY KEY CHECK (one = 1), offset_ms INTEGER NOT NULL);
        CREATE TABLE IF NOT EXISTS seeding (one INTEGER PRIMARY KEY CHECK (one = 1));
        """;

    private readonly string _connection;
    private readonly SqliteConnection _writing;
    private readonly Channel<Step> _steps = Channel.CreateBounded<Step>(
        new BoundedChannelOptions(MostWaiting) { SingleReader = true });
    private readonly Task _writer;

    private PracticeJournal(string connection, SqliteConnection writing)
    {
        _connection = connection;
        _writing = writing;
        _writer = Task.Run(WriteAll);
    }

    /// <summary>Opens the file, and makes it where there is none.</summary>
    /// <exception cref="SqliteException">It is broken, or cannot be written.</exception>
    public static PracticeJournal Open(string folder)
    {
        var connection = new SqliteConnectionStringBuilder
        {
            DataSource = Path.Combine(folder, FileName),
            DefaultTimeout = 5,
            Pooling = false,
        }.ToString();
        var writing = new SqliteConnection(connection);
        try
        {
            writing.Open();
            Run(writing, null, Schema);
            Run(writing, null, "PRAGMA synchronous=FULL;");
            return new PracticeJournal(connection, writing);
        }
        catch (SqliteException)
        {
            writing.Dispose();
            throw;
        }
    }

    /// <summary>Keeps a message; one kept before under the same way, id and number is left as it is.</summary>
    public Task Keep(PracticeMessage message) => Write(
        """
        INSERT INTO messages (way, number, id, text, encoding, segments, at)
        VALUES ($way, $number, $id, $text, $encoding, $segments, $at) ON CONFLICT DO NOTHING
        """,
        ("$way", message.Way), ("$number", message.Number), ("$id", message.Id), ("$text", message.Text),
        ("$encoding", message.Encoding), ("$segments", message.Segments),
        ("$at", InstantPattern.ExtendedIso.Format(message.At)));

    /// <summary>Keeps the clock's offset.</summary>
    public Task KeepOffset(Duration offset) => Write(
        "INSERT INTO clock (one, offset_ms) VALUES (1, $ms) ON CONFLICT (one) DO UPDATE SET offset_ms = $ms",
        ("$ms", (long)offset.TotalMilliseconds));

    /// <summary>The kept offset; zero when there is none.</summary>
    public async Task<Duration> Offset()
    {
        await using var reading = await OpenReading();
        await using var command = reading.CreateCommand();
        command.CommandText = "SELECT offset_ms FROM clock";
        return Duration.FromMilliseconds(await command.ExecuteScalarAsync() as long? ?? 0);
    }

    /// <summary>Keeps that the demo village is being made, or is no more.</summary>
    public Task KeepSeeding(bool isSeeding) => Write(
        isSeeding ? "INSERT INTO seeding (one) VALUES (1) ON CONFLICT DO NOTHING" : "DELETE FROM seeding");

    /// <summary>True when the making of the demo village was not ended.</summary>
    public async Task<bool> IsSeeding()
    {
        await using var reading = await OpenReading();
        await using var command = reading.CreateCommand();
        command.CommandText = "SELECT EXISTS (SELECT 1 FROM seeding)";
        return await command.ExecuteScalarAsync() is 1L;
    }

    /// <summary>Messages of a number after the n-th, oldest first.</summary>
    public async Task<IReadOnlyList<PracticeMessage>> Messages(string number, long after, bool bothWays)
    {
        await using var reading = await OpenReading();
        await using var command = reading.CreateCommand();
        command.CommandText = """
            SELECT n, way, number, id, text, encoding, segments, at FROM messages
            WHERE number = $number AND n > $after AND (way = 'out' OR $both) ORDER BY n
            """;
        command.Parameters.AddWithValue("$number", number);
        command.Parameters.AddWithValue("$after", after);
        command.Parameters.AddWithValue("$both", bothWays);
        await using var row = await command.ExecuteReaderAsync();
        var messages = new List<PracticeMessage>();
        while (await row.ReadAsync())
        {
            messages.Add(new PracticeMessage(
                row.GetInt64(0), row.GetString(1), row.GetString(2), row.GetString(3), row.GetString(4),
                row.GetString(5), row.GetInt32(6), InstantPattern.ExtendedIso.Parse(row.GetString(7)).Value));
        }

        return messages;
    }

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        if (!_steps.Writer.TryComplete()) return;
        await _writer;
        await _writing.DisposeAsync();
    }

    private async Task<SqliteConnection> OpenReading()
    {
        var reading = new SqliteConnection(_connection);
        await reading.OpenAsync();
        return reading;
    }

    private async Task Write(string sql, params (string Name, object Value)[] values)
    {
        var step = new Step(sql, values, new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously));
        await _steps.Writer.WriteAsync(step);
        await step.Done.Task;
    }

    private async Task WriteAll()
    {
        var batch = new List<Step>();
        while (await _steps.Reader.WaitToReadAsync())
        {
            while (batch.Count < MostAtOnce && _steps.Reader.TryRead(out var step)) batch.Add(step);
            WriteBatch(batch);
            batch.Clear();
        }
    }

    private void WriteBatch(List<Step> batch)
    {
        try
        {
            using var transaction = _writing.BeginTransaction();
            foreach (var step in batch) Run(_writing, transaction, step.Sql, step.Values);
            transaction.Commit();
            foreach (var step in batch) step.Done.TrySetResult();
        }
        catch (Exception fault)
        {
            foreach (var step in batch) step.Done.TrySetException(fault);
        }
    }

    private static void Run(
        SqliteConnection connection, SqliteTransaction? transaction, string sql,
        params (string Name, object Value)[] values)
    {
        using var command = connection.CreateCommand();
        command.Transaction = transaction;
        command.CommandText = sql;
        foreach (var (name, value) in values) command.Parameters.AddWithValue(name, value);
        command.ExecuteNonQuery();
    }

    private sealed record Step(string Sql, (string Name, object Value)[] Values, TaskCompletionSource Done);
}

/// <summary>A message of a practice phone.</summary>
/// <param name="N">Its place among all messages; rises.</param>
/// <param name="Way">"in" from the phone, "out" to it.</param>
/// <param name="Number">The phone.</param>
/// <param name="Id">The message's id.</param>
/// <param name="Text">The words.</param>
/// <param name="Encoding">"GSM7" or "UCS2".</param>
/// <param name="Segments">How many parts it takes.</param>
/// <param name="At">When, on the practice clock.</param>
internal sealed record PracticeMessage(
    long N, string Way, string Number, string Id, string Text, string Encoding, int Segments, Instant At);
