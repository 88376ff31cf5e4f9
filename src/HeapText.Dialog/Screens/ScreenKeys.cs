using HeapText.Dialog.Replies;

namespace HeapText.Dialog.Screens;

/// <summary>Where a farmer moves on the screen instead of answering.</summary>
internal enum ScreenMove
{
    None,
    More,
    Back,
    Menu,
}

/// <summary>The two keys that move. Both stand on every keypad, and neither can be part of a number, so that no
/// answer is taken for one.</summary>
internal static class ScreenKeys
{
    public const string More = "#";
    public const string Back = "*";

    /// <summary>The move that an entry means, by key or by word.</summary>
    public static ScreenMove Read(string input, string language, AnswerReader answers) =>
        (input.Trim(), answers.Read("screen", input, language)) switch
        {
            (More, _) or (_, "more") => ScreenMove.More,
            (Back, _) or (_, "back") => ScreenMove.Back,
            (_, "menu") => ScreenMove.Menu,
            _ => ScreenMove.None,
        };
}
