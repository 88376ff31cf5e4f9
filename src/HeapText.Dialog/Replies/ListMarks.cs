namespace HeapText.Dialog.Replies;

/// <summary>Finds "1.", "2." … and "a)", "b)" …, which mark the items of a list and are no amounts.</summary>
internal static class ListMarks
{
    /// <summary>The tags with a break for each mark.</summary>
    public static List<Tag> Parted(List<Tag> tags)
    {
        var marks = new HashSet<int>();
        for (var i = 0; i < tags.Count; i++)
            if (IsMark(tags, i, marks.Count + 1) && (marks.Count > 0 || StartsList(tags, i)))
                marks.Add(i);
        return marks.Count < 2 ? tags : [.. tags.Select((tag, i) => marks.Contains(i) ? Break : tag)];
    }

    private static Tag Break { get; } = new(new Token { Kind = TokenKind.WeakBreak }, []);

    private static bool IsMark(List<Tag> tags, int at, int place)
    {
        var token = tags[at].Token;
        return token.Kind switch
        {
            TokenKind.Number => token.Value == place && (token.IsItemMark || IsCheckNext(tags, at)),
            TokenKind.Word => token.IsItemMark && token.Text[0] == 'a' + place - 1,
            _ => false,
        };
    }

    /// <summary>"1 hot 2 sour": answers by the number of their question.</summary>
    private static bool IsCheckNext(List<Tag> tags, int at) => at + 1 < tags.Count
        && tags[at + 1].Meanings.Any(meaning => meaning.IsCheck)
        && !tags[at + 1].Meanings.Any(meaning => meaning.IsThing);

    /// <summary>At the start of a clause, or behind a colon after words such as "I have:".</summary>
    private static bool StartsList(List<Tag> tags, int at) => at == 0 || tags[at - 1].IsBreak
        || (tags[at].Token.IsAfterColon && !tags[at - 1].Meanings.Any(meaning => meaning.IsThing));
}
