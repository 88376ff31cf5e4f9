using HeapText.Carriers.Smpp.Wire;
using NodaTime;

namespace HeapText.Carriers.Tests.Smpp.Wire;

/// <summary>A peer that keeps each part until it is answered well, sends parts in any order and more than once, and
/// talks to a service whose store fails now and then and which is killed now and then.</summary>
internal sealed class ForgetfulPeer
{
    private const int Rounds = 2_000;

    private readonly Random _random;
    private readonly PartsLimits _limits;
    private readonly List<string> _texts = [];
    private readonly List<MessageBody> _kept = [];
    private readonly Dictionary<int, MessageBody> _open = [];
    private readonly HashSet<string> _durable = [];
    private PartsCollector<int> _collector;
    private Instant _now = Instant.FromUtc(2026, 2, 11, 6, 0);
    private int _lastToken;

    public ForgetfulPeer(int texts, PartKind kind, int mostTexts, Random random)
    {
        _random = random;
        _limits = new PartsLimits { MostTexts = mostTexts, MostTextsOfSender = Math.Max(1, mostTexts - 1) };
        _collector = new PartsCollector<int>(_limits, Alphabet.Gsm7);
        for (var i = 0; i < texts; i++)
        {
            _texts.Add(new string((char)('a' + i), 160 + random.Next(300)));
            _kept.AddRange(LongMessages.Of(_texts[i], (ushort)i, kind));
        }
    }

    /// <summary>Texts that did not become durable as a whole.</summary>
    public IEnumerable<string> Lost => _texts.Except(_durable);

    /// <summary>Messages without an answer, long after the last was sent.</summary>
    public int Unanswered => _open.Count;

    public void Run()
    {
        for (var round = 0; round < Rounds && _kept.Count + _open.Count > 0; round++)
        {
            var isCalm = round > Rounds / 2;
            if (!isCalm && _random.Next(40) == 0) Kill();
            if (_kept.Count > 0) Send(_kept[_random.Next(_kept.Count)], isCalm);
            _now += Duration.FromSeconds(_random.Next(3));
            Sweep(isCalm);
        }

        _now += _limits.Hold;
        Sweep(isCalm: true);
    }

    private void Send(MessageBody part, bool isCalm)
    {
        var token = ++_lastToken;
        _open.Add(token, part);
        switch (_collector.Add(part, token, _now))
        {
            case Collected<int>.Given given:
                Keep(given.Text, isCalm);
                break;
            case Collected<int>.Known:
                Answer([token], isWell: true);
                break;
            case Collected<int>.NoRoom:
                Answer([token], isWell: false);
                break;
        }
    }

    private void Keep(GivenText<int> text, bool isCalm)
    {
        var isKept = isCalm || _random.Next(3) > 0;
        if (isKept && text.IsComplete) _durable.Add(text.Text);
        // An incomplete text is answered well too; in this trial only when its whole came before, so that the whole
        // must come of the parts.
        var isWell = isKept && (text.IsComplete || _durable.Any(whole => whole[0] == text.Text.Trim('…')[0]));
        Answer(_collector.Settle(text, isKept, _now), isWell);
    }

    private void Sweep(bool isCalm)
    {
        var swept = _collector.Sweep(_now);
        Answer(swept.SendAgain, isWell: false);
        foreach (var text in swept.Texts) Keep(text, isCalm);
    }

    private void Answer(IEnumerable<int> tokens, bool isWell)
    {
        foreach (var token in tokens)
        {
            if (!_open.Remove(token, out var part)) throw new InvalidOperationException("Answered twice.");
            if (isWell) _kept.Remove(part);
        }
    }

    // All that was in memory is gone; the peer still has what was not answered well.
    private void Kill()
    {
        _open.Clear();
        _collector = new PartsCollector<int>(_limits, Alphabet.Gsm7);
    }
}
