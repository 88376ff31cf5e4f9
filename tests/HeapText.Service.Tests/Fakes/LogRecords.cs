using System.Collections.Concurrent;
using Microsoft.Extensions.Logging;

namespace HeapText.Service.Tests.Fakes;

/// <summary>Keeps everything that is logged, with its exception.</summary>
internal sealed class LogRecords : ILoggerProvider
{
    public ConcurrentQueue<string> Lines { get; } = new();

    public ILogger CreateLogger(string categoryName) => new Recorder(this);

    public void Dispose()
    {
        // Nothing is held.
    }

    private sealed class Recorder(LogRecords records) : ILogger
    {
        public IDisposable? BeginScope<TState>(TState state)
            where TState : notnull => null;

        public bool IsEnabled(LogLevel logLevel) => true;

        public void Log<TState>(
            LogLevel logLevel, EventId eventId, TState state, Exception? exception,
            Func<TState, Exception?, string> formatter) =>
            records.Lines.Enqueue($"{formatter(state, exception)} {exception}");
    }
}
