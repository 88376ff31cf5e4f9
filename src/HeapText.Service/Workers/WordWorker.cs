using HeapText.Dialog.Engine;
using HeapText.Dialog.Ports;
using HeapText.Service.Turns;

namespace HeapText.Service.Workers;

/// <summary>Takes up words that were explained, by this process or another, and lets who waits for them be
/// told.</summary>
internal sealed partial class WordWorker(
    IStore store, WordBook book, WordDesk desk, TurnRunner turns, TimeProvider time, ILogger<WordWorker> logger)
    : PassWorker(time, logger)
{
    /// <summary>A farmer's text may have been read by the old words and be kept only after the first look.</summary>
    private const int Looks = 2;

    private static readonly TimeSpan BetweenLooks = TimeSpan.FromSeconds(2);
    private readonly TimeProvider _time = time;
    private readonly ILogger _logger = logger;
    private IReadOnlyList<OwnWord> _known = [];
    private int _looksLeft = Looks;

    /// <inheritdoc/>
    protected override async Task<int> Pass(CancellationToken cancel)
    {
        var words = await store.OwnWords(cancel);
        if (!words.SequenceEqual(_known))
        {
            book.Set(words);
            (_known, _looksLeft) = (words, Looks);
        }
        if (_looksLeft > 0 && await Tell(cancel)) _looksLeft--;
        return 0;
    }

    /// <inheritdoc/>
    protected override Task Rest(CancellationToken cancel) => Task.Delay(BetweenLooks, _time, cancel);

    /// <returns>False when somebody must be looked at again.</returns>
    private async Task<bool> Tell(CancellationToken cancel)
    {
        var explained = _known.Select(word => (word.District, word.Word)).ToHashSet();
        try
        {
            foreach (var (open, district) in await desk.Waiting(cancel))
                if (open.Farmer.UnknownWords.Any(waited => explained.Contains((district, waited.Word))))
                    await turns.Wake(open.Key, CancellationToken.None);
            return true;
        }
        catch (StoreUnavailableException fault)
        {
            LogTellPutOff(fault);
            return false;
        }
    }

    [LoggerMessage(202, LogLevel.Warning,
        "The store did not take the telling of an explained word; it is tried again.")]
    private partial void LogTellPutOff(Exception fault);
}
