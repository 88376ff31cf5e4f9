using System.Collections.Concurrent;
using HeapText.Dialog.Ports;
using Microsoft.Data.Sqlite;

namespace HeapText.Store.Sqlite;

/// <summary>Connections that only read. What was acknowledged before a read began is seen by it.</summary>
internal sealed class Readers(string file) : IDisposable
{
    /// <summary>Connections kept open between reads.</summary>
    private const int Kept = 16;

    private static readonly TimeSpan LockWait = TimeSpan.FromSeconds(3);
    private readonly ConcurrentBag<Session> _idle = [];

    /// <summary>Reads, on a connection nobody else uses meanwhile.</summary>
    /// <exception cref="StoreUnavailableException">The file cannot be read.</exception>
    public T Read<T>(Func<Session, T> read)
    {
        Session? session = null;
        try
        {
            if (!_idle.TryTake(out session)) session = Open();
            var result = read(session);
            if (_idle.Count < Kept)
            {
                _idle.Add(session);
                session = null;
            }
            return result;
        }
        catch (SqliteException e)
        {
            throw new StoreUnavailableException("The store's file cannot be read.", e);
        }
        finally
        {
            session?.Dispose();
        }
    }

    public void Dispose()
    {
        while (_idle.TryTake(out var session)) session.Dispose();
    }

    private Session Open()
    {
        var session = Session.Open(file, LockWait);
        session.Script("PRAGMA query_only = 1;");
        return session;
    }
}
