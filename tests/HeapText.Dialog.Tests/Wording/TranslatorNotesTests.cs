using HeapText.Dialog.Wording;

namespace HeapText.Dialog.Tests.Wording;

public sealed class TranslatorNotesTests
{
    /// <summary>What a placeholder is filled with cannot be seen from the message.</summary>
    [Fact]
    public void EnglishMessage_WithAPlaceholder_HasANoteForTranslators()
    {
        var english = Repository.Dialogs.Book.File("en");

        Assert.DoesNotContain(Catalogue.All, message =>
            message.Slots.Count > 0 && !english.Noted.Contains(message.Key));
    }

    [Fact]
    public void Language_AsShipped_SaysWhoWroteItAndThatNobodyHasSignedIt() =>
        Assert.All(Repository.Dialogs.Book.Languages.Select(Repository.Dialogs.Book.File), file =>
        {
            Assert.NotEmpty(file.Provenance);
            Assert.False(file.Reviewed);
        });
}
