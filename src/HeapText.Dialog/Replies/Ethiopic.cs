using System.Globalization;
using System.Text;

namespace HeapText.Dialog.Replies;

/// <summary>Takes Ethiopic letters apart into consonant and vowel, so that an ending that changes the last vowel is
/// an ending like any other, and a wrong vowel is one slip.</summary>
/// <remarks>
/// Source: The Unicode Standard, block Ethiopic: rows of eight letters from U+1200, the place in the row being the
/// vowel and the sixth letter the bare consonant. Which letters sound alike in Amharic: common practice, no source.
/// </remarks>
internal static class Ethiopic
{
    private const char First = '\u1200';
    private const char Last = '\u1357';
    private const int Row = 8;
    private const int Bare = 5;
    private const int WithW = 7;

    /// <summary>The signs of the vowels, by their place in a row; a space where there is none.</summary>
    private const string Vowels = "ኧኡኢኣኤ ኦ";

    private const char Glottal = 'አ';
    private const string Palatals = "ሸቸኘዠጀጨየ";

    private const int LettersForOneMore = 4;
    private const int LongestNumber = 6;
    private const int Hundred = 100;
    private const int TenThousand = 10_000;

    /// <summary>Rows that sound like another.</summary>
    private static readonly Dictionary<char, char> SoundsLike = new()
    {
        ['ሐ'] = 'ሀ',
        ['ኀ'] = 'ሀ',
        ['ኸ'] = 'ሀ',
        ['ሠ'] = 'ሰ',
        ['ቐ'] = 'ቀ',
        ['ዐ'] = Glottal,
        ['ዸ'] = 'ደ',
        ['ጘ'] = 'ገ',
        ['ፀ'] = 'ጸ',
    };

    /// <summary>Rows of a consonant with w, by the row without.</summary>
    private static readonly Dictionary<char, char> WithoutW = new()
    {
        ['ቈ'] = 'ቀ',
        ['ቘ'] = 'ቀ',
        ['ኈ'] = 'ሀ',
        ['ኰ'] = 'ከ',
        ['ዀ'] = 'ሀ',
        ['ጐ'] = 'ገ',
    };

    /// <summary>Appends consonant and vowel of an Ethiopic letter; false, and nothing, for any other.</summary>
    public static bool TryAppend(StringBuilder to, char letter)
    {
        if (letter is < First or > Last)
            return false;
        var place = (letter - First) % Row;
        var row = (char)(letter - place);
        var hasW = WithoutW.TryGetValue(row, out var plainRow);
        row = hasW ? plainRow : SoundsLike.GetValueOrDefault(row, row);
        if (row == Glottal)
            to.Append(place switch { Bare => 'እ', WithW => 'ኧ', 0 => 'ኣ', _ => Vowels[place] });
        else if (hasW)
            AppendRounded(to, row, place);
        else if (place == WithW)
            to.Append((char)(row + Bare)).Append('ው').Append('ኣ');
        else
            Append(to, row, Vowels[place]);
        return true;
    }

    /// <summary>Whether a word as taken apart is written in this script.</summary>
    public static bool IsWord(string word) => word.Length > 0 && word[0] is >= First and <= Last;

    /// <summary>Whether a character is a numeral; there are signs for tens and hundreds, and no nought.</summary>
    public static bool IsNumeral(char c) => c is >= '፩' and <= '፼';

    /// <summary>The number that numerals write: ፪፻፶ is 250. Numerals after the sixth are left out.</summary>
    public static decimal Number(ReadOnlySpan<char> numerals)
    {
        decimal total = 0, part = 0;
        foreach (var numeral in numerals[..Math.Min(numerals.Length, LongestNumber)])
        {
            var value = (decimal)CharUnicodeInfo.GetNumericValue(numeral);
            if (value == TenThousand)
                (total, part) = (Math.Max(1, total + part) * value, 0);
            else if (value == Hundred)
                (total, part) = (total + Math.Max(1, part) * value, 0);
            else
                part += value;
        }

        return total + part;
    }

    /// <summary>How many letters a word as taken apart was written with.</summary>
    public static int Letters(string word) => word.Where((part, i) => i == 0 || !IsVowel(part)).Count();

    /// <summary>Whether two words differ in vowels only; true for words of other scripts.</summary>
    public static bool AgreeInConsonants(string one, string other) => !IsWord(one) || !IsWord(other)
        || one.Where(part => !IsVowel(part)).SequenceEqual(other.Where(part => !IsVowel(part)));

    /// <summary>Whether a consonant with its vowel stands at a place of a word of four letters and more.</summary>
    public static bool IsWholeLetterAt(string word, int at) => IsWord(word) && at + 1 < word.Length
        && !IsVowel(word[at]) && IsVowel(word[at + 1]) && Letters(word) >= LettersForOneMore - 1;

    /// <summary>Whether the longer of two words, of four letters at least, is the other with a letter put in.</summary>
    public static bool IsOneLetterApart(string one, string other)
    {
        var (longer, shorter) = one.Length > other.Length ? (one, other) : (other, one);
        if (longer.Length != shorter.Length + 2 || Letters(longer) < LettersForOneMore)
            return false;
        for (var i = 0; i < longer.Length - 1; i++)
            if (IsWholeLetterAt(longer, i) && longer.AsSpan(0, i).SequenceEqual(shorter.AsSpan(0, i))
                && longer.AsSpan(i + 2).SequenceEqual(shorter.AsSpan(i)))
                return true;
        return false;
    }

    private static bool IsVowel(char part) => part is >= 'አ' and <= 'ኧ';

    /// <summary>The letters for "go" and "gu" have two forms each.</summary>
    private static void AppendRounded(StringBuilder to, char row, int place)
    {
        if (place is 0 or Bare)
            Append(to, row, place == 0 ? 'ኦ' : 'ኡ');
        else
            to.Append((char)(row + Bare)).Append('ው').Append(Vowels[place]);
    }

    private static void Append(StringBuilder to, char row, char vowel)
    {
        to.Append((char)(row + Bare));
        vowel = (row, vowel) switch
        {
            ('ሀ', 'ኧ') => 'ኣ',
            ('ወ', 'ኡ') or ('የ', 'ኢ') => ' ',
            (_, 'ኤ') when Palatals.Contains(row) => 'ኧ',
            _ => vowel,
        };
        if (vowel != ' ')
            to.Append(vowel);
    }
}
