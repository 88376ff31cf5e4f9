using Microsoft.Data.Sqlite;

namespace HeapText.Store.Sqlite;

/// <summary>One connection with its prepared statements. Used by one thread at a time.</summary>
internal sealed class Session : IDisposable
{
    private readonly SqliteConnection _connection;
    private readonly Dictionary<string, SqliteCommand> _prepared = [];

    private Session(SqliteConnection connection) => _connection = connection;

    /// <summary>Opens a connection of its own; a lock held by another program is waited for up to the given
    /// time.</summary>
    /// <exception cref="SqliteException">The file cannot be opened.</exception>
    public static Session Open(string file, TimeSpan lockWait)
    {
        var settings = new SqliteConnectionStringBuilder
        {
            DataSource = file,
            Pooling = false,
            DefaultTimeout = (int)Math.Ceiling(lockWait.TotalSeconds),
        };
        var connection = new SqliteConnection(settings.ToString());
        try
        {
            connection.Open();
        }
        catch
        {
            connection.Dispose();
            throw;
        }
        return new Session(connection);
    }

    /// <summary>Runs a statement that gives no rows. Parameters ?1, ?2, … in order.</summary>
    public void Run(string sql, params ReadOnlySpan<object?> values) => Bind(sql, values).ExecuteNonQuery();

    /// <summary>The first column of the first row; null when there is none or it is NULL.</summary>
    public object? Scalar(string sql, params ReadOnlySpan<object?> values) =>
        Bind(sql, values).ExecuteScalar() is { } value and not DBNull ? value : null;

    /// <summary>Rows to read; to be disposed before the statement is used again.</summary>
    public SqliteDataReader Rows(string sql, params ReadOnlySpan<object?> values) => Bind(sql, values).ExecuteReader();

    /// <summary>Runs several statements that are used once, such as a migration.</summary>
    public void Script(string sql)
    {
        using var command = _connection.CreateCommand();
#pragma warning disable CA2100 // scripts are constants and embedded files
        command.CommandText = sql;
#pragma warning restore CA2100
        command.ExecuteNonQuery();
    }

    /// <summary>Copies the whole database, as it is at one moment, into another file by SQLite's online
    /// backup.</summary>
    /// <exception cref="SqliteException">This file cannot be read, or the other not written.</exception>
    public void CopyTo(string file)
    {
        using var other = Open(file, TimeSpan.FromSeconds(_connection.DefaultTimeout));
        _connection.BackupDatabase(other._connection);
    }

    /// <summary>Ends a transaction without its effect, when one is open.</summary>
    public void RollBack()
    {
        if (SQLitePCL.raw.sqlite3_get_autocommit(_connection.Handle) == 0) Run("ROLLBACK");
    }

    public void Dispose()
    {
        foreach (var command in _prepared.Values) command.Dispose();
        _connection.Dispose();
    }

    private SqliteCommand Bind(string sql, ReadOnlySpan<object?> values)
    {
        if (!_prepared.TryGetValue(sql, out var command))
        {
            command = _connection.CreateCommand();
#pragma warning disable CA2100 // every statement is a constant of Tables
            command.CommandText = sql;
#pragma warning restore CA2100
            for (var i = 1; i <= values.Length; i++)
                command.Parameters.Add(new SqliteParameter { ParameterName = $"?{i}" });
            command.Prepare();
            _prepared.Add(sql, command);
        }
        for (var i = 0; i < values.Length; i++) command.Parameters[i].Value = values[i] ?? DBNull.Value;
        return command;
    }
}
