using System.Globalization;
using System.Text;

namespace HeapText.Dialog.Replies;

/// <summary>Cuts a text into words, numbers and breaks. Any string is accepted.</summary>
internal ref struct Tokenizer(string text, Func<string, bool> isKnown)
{
    private const int LongestNumber = 12;
    private const int LongestElided = 2;
    private const int LongestBeforeMark = 4;
    private readonly List<Token> _tokens = [];
    private readonly StringBuilder _word = new();
    private int _at;
    private int _lettersBeforeApostrophe;

    public List<Token> Read()
    {
        while (_at < text.Length)
        {
            var c = text[_at];
            if (char.IsLetter(c))
                ReadRun();
            else if (char.IsDigit(c))
                ReadDigits();
            else
                ReadMark(c);
        }

        return _tokens;
    }

    /// <summary>Letters; digits among them, as in "b4", stay with them only in a known word.</summary>
    private void ReadRun()
    {
        var start = _at;
        TakeLetters(alsoDigits: true);
        if (_word.Length > 0 && HasDigit(_word) && !isKnown(_word.ToString()))
        {
            _at = start;
            TakeLetters(alsoDigits: false);
        }

        if (_word.Length == 0)
            return;
        var word = WithoutElided(_word.ToString());
        _tokens.Add(new Token
        {
            Kind = TokenKind.Word,
            Text = Shortened(word) ?? word,
            IsItemMark = word.Length == 1 && IsItemMarkAt(_at),
        });
    }

    /// <summary>In "d'herbe" the elided "d" says nothing, but "ng'ombe" is one word.</summary>
    private readonly string WithoutElided(string word)
    {
        var rest = word[_lettersBeforeApostrophe..];
        var isElided = _lettersBeforeApostrophe is > 0 and <= LongestElided && rest.Length > 1;
        return isElided && !isKnown(word) && isKnown(rest) ? rest : word;
    }

    /// <summary>A known word written with a point or stroke inside, as "k.g" or "k/g"; else null.</summary>
    private string? Shortened(string before)
    {
        var mark = _at;
        if (before.Length > LongestBeforeMark || _at + 1 >= text.Length || text[_at] is not ('.' or '/')
            || !char.IsLetter(text[_at + 1]))
            return null;
        _at++;
        TakeLetters(alsoDigits: false);
        var joined = before + _word;
        if (isKnown(joined))
            return joined;
        _at = mark;
        return null;
    }

    private void TakeLetters(bool alsoDigits)
    {
        _word.Clear();
        _lettersBeforeApostrophe = 0;
        for (; _at < text.Length; _at++)
        {
            var c = text[_at];
            if (char.IsLetter(c))
                Letters.AppendPlain(_word, c);
            else if (alsoDigits && char.IsDigit(c))
                _word.Append(Digit(c));
            else if (Letters.IsApostrophe(c))
                _lettersBeforeApostrophe = _lettersBeforeApostrophe > 0 ? _lettersBeforeApostrophe : _word.Length;
            else if (!Letters.IsInvisible(c))
                break;
        }
    }

    private void ReadDigits()
    {
        var start = _at;
        TakeLetters(alsoDigits: true);
        if (!_word.ToString().All(char.IsAsciiDigit) && isKnown(_word.ToString()))
        {
            _tokens.Add(new Token { Kind = TokenKind.Word, Text = _word.ToString() });
            return;
        }

        _at = start;
        var negative = IsMinusBefore(start);
        var whole = TakeDigits();
        if (TakeAfter('/') is { } below)
        {
            AddQuotient(whole, below, negative);
            return;
        }

        var digits = whole + DecimalsAfter(whole);
        _tokens.Add(new Token
        {
            Kind = TokenKind.Number,
            Text = digits,
            Value = decimal.Parse(digits, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture),
            IsNegative = negative,
            IsItemMark = digits.Length <= 2 && IsItemMarkAt(_at),
            IsAfterColon = text.AsSpan(0, start).TrimEnd() is [.., ':'],
        });
    }

    /// <summary>
    /// Digits after a point or comma; three after a comma, and three noughts after a point, are thousands.
    /// </summary>
    private string DecimalsAfter(string whole)
    {
        var isComma = _at < text.Length && text[_at] == ',';
        if (!isComma && !(_at < text.Length && text[_at] == '.'))
            return "";
        var decimals = TakeAfter(text[_at]);
        if (decimals is null)
            return "";
        if (decimals.Length != 3 || whole is "0" || !(isComma || decimals is "000"))
            return "." + decimals;
        return whole.Length > LongestNumber ? decimals : decimals + DecimalsAfter(whole + decimals);
    }

    /// <summary>Digits straight after a mark, with the mark; null, and nothing taken, when there are none.</summary>
    private string? TakeAfter(char mark)
    {
        if (_at + 1 >= text.Length || text[_at] != mark || !char.IsDigit(text[_at + 1]))
            return null;
        _at++;
        return TakeDigits();
    }

    private string TakeDigits()
    {
        var digits = new StringBuilder();
        for (; _at < text.Length && char.IsDigit(text[_at]); _at++)
            if (digits.Length < LongestNumber)
                digits.Append(Digit(text[_at]));
        return digits.ToString();
    }

    private readonly void AddQuotient(string above, string below, bool negative)
    {
        var (over, under) = (Whole(above), Whole(below));
        if (over < under && under <= 10)
        {
            _tokens.Add(new Token
            {
                Kind = TokenKind.Number,
                Value = Math.Round(over / under, 4),
                IsFraction = true,
                IsNegative = negative,
            });
            return;
        }

        _tokens.Add(new Token { Kind = TokenKind.Number, Text = above, Value = over, IsNegative = negative });
        _tokens.Add(new Token { Kind = TokenKind.WeakBreak });
        _tokens.Add(new Token { Kind = TokenKind.Number, Text = below, Value = under });
    }

    private void ReadMark(char c)
    {
        var value = CharUnicodeInfo.GetNumericValue(c);
        if (value is > 0 and < 1)
            _tokens.Add(new Token { Kind = TokenKind.Number, Value = (decimal)value, IsFraction = true });
        else if (Ethiopic.IsNumeral(c))
        {
            ReadNumerals();
            return;
        }
        else if (IsPause(c) || c is ',' or '|' or '،' or '\\' or '•' or '·' or '፣' or '፥'
            || (c is '/' && !IsShortenedWord()))
            _tokens.Add(new Token { Kind = TokenKind.WeakBreak });
        else if (IsStrongBreak(c))
            _tokens.Add(new Token { Kind = TokenKind.StrongBreak });
        else if (IsDash(c) && _tokens is [.., { Kind: TokenKind.Number }] && IsDigitNext())
            _tokens.Add(new Token { Kind = TokenKind.Range });
        else if (ReadSymbol())
            return;
        else if (IsPicture(c))
            _tokens.Add(new Token { Kind = TokenKind.WeakBreak });
        _at++;
    }

    private void ReadNumerals()
    {
        var start = _at;
        while (_at < text.Length && Ethiopic.IsNumeral(text[_at]))
            _at++;
        _tokens.Add(new Token { Kind = TokenKind.Number, Value = Ethiopic.Number(text.AsSpan(start, _at - start)) });
    }

    /// <summary>A sign that words.yml knows, such as "+" or a thumb up.</summary>
    private bool ReadSymbol()
    {
        var length = _at + 1 < text.Length && char.IsSurrogatePair(text[_at], text[_at + 1]) ? 2 : 1;
        var symbol = text.Substring(_at, length);
        if (char.IsWhiteSpace(text[_at]) || !isKnown(symbol))
            return false;
        _tokens.Add(new Token { Kind = TokenKind.Word, Text = symbol });
        _at += length;
        return true;
    }

    /// <summary>A little picture that says nothing parts what stands around it.</summary>
    private static bool IsPicture(char c) => char.IsHighSurrogate(c) || c is >= '\u2600' and <= '\u27bf';

    /// <summary>True at the slash of "w/" or "c/", with: it ends a word, not a part of the list.</summary>
    private readonly bool IsShortenedWord() =>
        _at > 0 && char.IsLetter(text[_at - 1]) && _tokens is [.., { Kind: TokenKind.Word, Text.Length: 1 }];

    private readonly bool IsDigitNext()
    {
        var next = _at + 1;
        while (next < text.Length && text[next] == ' ')
            next++;
        return next < text.Length && char.IsDigit(text[next]);
    }

    private readonly bool IsMinusBefore(int digit) =>
        digit > 0 && IsDash(text[digit - 1]) && (digit == 1 || char.IsWhiteSpace(text[digit - 2]))
        && _tokens is not [.., { Kind: TokenKind.Range }];

    private readonly bool IsItemMarkAt(int at) =>
        at < text.Length
        && (text[at] == ')' || (text[at] == '.' && at + 1 < text.Length && !char.IsDigit(text[at + 1])));

    /// <summary>Two word spaces, or colons for them, are the older form of the Ethiopic full stop.</summary>
    private readonly bool IsStrongBreak(char c) =>
        c is '.' or '!' or '?' or ';' or '\n' or '\r' or '؟' or '…' or '。' or '።' or '፤' or '፧' or '፨'
        || (c is ':' or '፡' && IsNext(c));

    /// <summary>Two points and more are a pause, no full stop.</summary>
    private readonly bool IsPause(char c) => c == '.' && (IsNext(c) || (_at > 0 && text[_at - 1] == c));

    private readonly bool IsNext(char c) => _at + 1 < text.Length && text[_at + 1] == c;

    private static bool IsDash(char c) => c is '-' or '–' or '—' or '−' or '‐' or '‑';

    private static bool HasDigit(StringBuilder word) => word.ToString().AsSpan().ContainsAnyInRange('0', '9');

    private static char Digit(char c) => (char)('0' + CharUnicodeInfo.GetDecimalDigitValue(c));

    private static decimal Whole(string digits) =>
        decimal.Parse(digits, NumberStyles.None, CultureInfo.InvariantCulture);
}
