using System.Globalization;
using System.Text;

namespace HeapText.Dialog.Replies;

/// <summary>Brings characters to one form: small letters without accents, plain digits, no apostrophes.</summary>
internal static class Letters
{
    /// <summary>Marks that join letters into one word and are left out.</summary>
    public static bool IsApostrophe(char c) =>
        c is '\'' or '’' or '‘' or 'ʼ' or 'ʻ' or '`' or '´' or '′' or '\uff07' or '‛';

    /// <summary>Characters nobody sees, such as marks of direction and joiners.</summary>
    public static bool IsInvisible(char c) => c > 0x7f && CharUnicodeInfo.GetUnicodeCategory(c)
        is UnicodeCategory.Format or UnicodeCategory.NonSpacingMark or UnicodeCategory.EnclosingMark;

    /// <summary>Appends the plain form of a letter.</summary>
    public static void AppendPlain(StringBuilder to, char letter)
    {
        if (letter < 0x80)
        {
            to.Append(char.ToLowerInvariant(letter));
            return;
        }

        if (Ethiopic.TryAppend(to, letter))
            return;
        var small = char.ToLowerInvariant(letter);
        if (small is 'œ' or 'æ')
        {
            to.Append(small == 'œ' ? "oe" : "ae");
            return;
        }

        foreach (var part in small.ToString().Normalize(NormalizationForm.FormD))
            if (char.IsLetter(part))
                to.Append(part);
    }

    /// <summary>The normalised words of a phrase in words.yml; digits and letters may stand in one word.</summary>
    public static IEnumerable<string> Words(string phrase)
    {
        var word = new StringBuilder();
        for (var i = 0; i < phrase.Length; i++)
        {
            var c = phrase[i];
            if (char.IsLetter(c))
                AppendPlain(word, c);
            else if (char.IsAsciiDigit(c) || char.IsSurrogate(c) || char.IsSymbol(c) || c is '&')
                word.Append(c);
            else if (!IsApostrophe(c) && !IsInvisible(c) && word.Length > 0)
            {
                yield return word.ToString();
                word.Clear();
            }
        }

        if (word.Length > 0)
            yield return word.ToString();
    }
}
