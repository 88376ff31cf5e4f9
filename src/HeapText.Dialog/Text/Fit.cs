namespace HeapText.Dialog.Text;

/// <summary>Fits texts to phones: encoding, segments and screens.</summary>
/// <remarks>
/// Sources: 3GPP TS 23.038 section 6.2 (alphabets, 140 octets a message); 3GPP TS 23.040 section 9.2.3.24.1
/// (concatenation with an 8-bit reference, whose six octets of header leave 153 septets or 67 code units).
/// </remarks>
public static class Fit
{
    private static readonly Capacity SmallAlphabet = new(Single: 160, Joined: 153, Screen: 160);
    private static readonly Capacity WideAlphabet = new(Single: 70, Joined: 67, Screen: 70);

    private sealed record Capacity(int Single, int Joined, int Screen);

    /// <summary>Counts what a text takes. Any text is accepted; a lone surrogate counts as one UCS-2 unit.</summary>
    public static Fitting Measure(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var encoding = EncodingOf(text);
        var capacity = CapacityOf(encoding);
        var whole = Cut(text, encoding, int.MaxValue);
        var units = whole[0].Units;
        var segments = units <= capacity.Single ? whole : Cut(text, encoding, capacity.Joined);
        var screens = units <= capacity.Screen ? 1 : Cut(text, encoding, capacity.Screen).Count;
        return new Fitting(encoding, units, segments.Count, [.. segments.Select(piece => piece.Units)], screens);
    }

    /// <summary>True when a text fits one USSD screen.</summary>
    public static bool FitsScreen(ReadOnlySpan<char> text)
    {
        var septets = 0;
        foreach (var character in text)
        {
            var cost = Gsm7.Cost(character);
            if (cost == 0) return text.Length <= WideAlphabet.Screen;
            septets += cost;
        }

        return septets <= SmallAlphabet.Screen;
    }

    /// <summary>The text of each segment; an escape or a surrogate pair is never divided.</summary>
    public static IReadOnlyList<string> Split(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return Split(text, EncodingOf(text));
    }

    /// <summary>The text of each segment when a line needs the wider encoding for a text that the smaller one
    /// holds.</summary>
    public static IReadOnlyList<string> SplitWide(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return Split(text, TextEncoding.Ucs2);
    }

    private static List<string> Split(string text, TextEncoding encoding)
    {
        var capacity = CapacityOf(encoding);
        var fitsOne = Cut(text, encoding, int.MaxValue)[0].Units <= capacity.Single;
        var pieces = Cut(text, encoding, fitsOne ? int.MaxValue : capacity.Joined);
        return [.. pieces.Select(piece => text.Substring(piece.Start, piece.Length))];
    }

    private static TextEncoding EncodingOf(string text)
    {
        foreach (var character in text)
            if (Gsm7.Cost(character) == 0) return TextEncoding.Ucs2;
        return TextEncoding.Gsm7;
    }

    private static Capacity CapacityOf(TextEncoding encoding) =>
        encoding == TextEncoding.Gsm7 ? SmallAlphabet : WideAlphabet;

    private static List<(int Start, int Length, int Units)> Cut(string text, TextEncoding encoding, int capacity)
    {
        var pieces = new List<(int, int, int)>();
        int start = 0, units = 0;
        for (var i = 0; i < text.Length;)
        {
            var length = i + 1 < text.Length && char.IsSurrogatePair(text[i], text[i + 1]) ? 2 : 1;
            var cost = encoding == TextEncoding.Gsm7 ? Gsm7.Cost(text[i]) : length;
            if (units + cost > capacity)
            {
                pieces.Add((start, i - start, units));
                (start, units) = (i, 0);
            }

            units += cost;
            i += length;
        }

        pieces.Add((start, text.Length - start, units));
        return pieces;
    }
}
