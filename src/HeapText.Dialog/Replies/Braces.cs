namespace HeapText.Dialog.Replies;

/// <summary>Spells out a phrase with choices: <c>{cow,ox} {dung,manure}</c> stands for four phrases.</summary>
internal static class Braces
{
    /// <summary>Every phrase that the pattern stands for. A brace without its partner is kept as it is.</summary>
    public static IEnumerable<string> Expand(string pattern)
    {
        var open = pattern.IndexOf('{', StringComparison.Ordinal);
        var close = open < 0 ? -1 : pattern.IndexOf('}', open);
        if (close < 0)
            return [pattern];
        var before = pattern[..open];
        var choices = pattern[(open + 1)..close].Split(',');
        var rests = Expand(pattern[(close + 1)..]).ToArray();
        return choices.SelectMany(choice => rests.Select(rest => before + choice + rest));
    }
}
