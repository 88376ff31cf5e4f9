using HeapText.Dialog.Engine;
using HeapText.Dialog.Ports;
using HeapText.Dialog.Wording;
using NodaTime;

namespace HeapText.Dialog.Tests.Engine;

/// <summary>On real lines only what somebody answers for is said.</summary>
public sealed class UnreviewedLanguageTests
{
    private static readonly Instant Now = Instant.FromUtc(2026, 3, 2, 4, 0);

    private Farmer? _farmer;

    [Fact]
    public void Join_InALanguageThatIsNotAllowed_IsAnsweredInTheGroupsAndHintsAtNoOther()
    {
        var said = Hear(Allowing(), "JIUNGE 41");

        Assert.StartsWith("Compost help for Upper Ziwani", said, StringComparison.Ordinal);
        Assert.DoesNotContain("KISWAHILI", said, StringComparison.Ordinal);
        Assert.Equal(said.TrimEnd(), said);
    }

    [Fact]
    public void AskingFor_ALanguageThatIsNotAllowed_IsAnsweredWithWhatIsOffered()
    {
        var office = Allowing();
        Hear(office, "JOIN 41");
        Hear(office, "yes");

        var said = Hear(office, "KISWAHILI");

        Assert.StartsWith("These languages we can write. English: text ENGLISH", said, StringComparison.Ordinal);
        Assert.Equal("en", _farmer!.Language);
    }

    [Fact]
    public void AskingFor_ALanguageThatIsAllowed_ChangesToIt()
    {
        var office = Allowing("en", "sw");
        Assert.Contains("KISWAHILI", Hear(office, "JOIN 41"), StringComparison.Ordinal);
        Hear(office, "yes");

        Hear(office, "KISWAHILI");

        Assert.Equal("sw", _farmer!.Language);
    }

    [Fact]
    public void Group_OfALanguage_IsSpokenToInItAndTheOthersAreNot()
    {
        var office = Allowing();

        Assert.StartsWith("Msaada wa mboji", Hear(office, "JOIN 42"), StringComparison.Ordinal);
        _farmer = null;
        Assert.StartsWith("Compost help", Hear(office, "JOIN 41"), StringComparison.Ordinal);
    }

    [Fact]
    public void Farmer_WhoseLanguageIsNoLongerAllowed_IsWrittenToInTheGroups()
    {
        Hear(Allowing("en", "sw"), "JOIN 41");
        Hear(Allowing("en", "sw"), "yes");
        Hear(Allowing("en", "sw"), "KISWAHILI");

        var said = Hear(Allowing(), "MSAADA");

        Assert.StartsWith("We help you make compost.", said, StringComparison.Ordinal);
        Assert.Equal("sw", _farmer!.Language);
    }

    [Fact]
    public void ReviewedLanguage_WithoutBeingAllowed_IsOffered()
    {
        var book = Repository.Dialogs.Book;
        var reviewed = new Phrasebook([book.File("en"), book.File("sw") with { Reviewed = true }]);

        var said = Hear(Allowing(), "JOIN 41", Repository.Dialogs with { Book = reviewed });

        Assert.Contains("KISWAHILI", said, StringComparison.Ordinal);
    }

    [Fact]
    public void Practice_AllowsAll() => Assert.Contains("KISWAHILI", Hear(new Office(), "JOIN 41"),
        StringComparison.Ordinal);

    private static Office Allowing(params string[] languages) =>
        new() { Languages = languages.ToHashSet(StringComparer.Ordinal) };

    private string Hear(Office office, string text, DialogSet? dialogs = null)
    {
        var groups = new Dictionary<int, Group>
        {
            [41] = new(41, "Upper Ziwani", "en", Talker.Zone, "Trainer, Marula Flats"),
            [42] = new(42, "Lower Ziwani", "sw", Talker.Zone, "Trainer, Marula Flats"),
        };
        var reaction = new Conversation(dialogs ?? Repository.Dialogs, groups, office)
            .Hear(_farmer, "subject", "lake", text, Now);
        _farmer = reaction.Farmer;
        return string.Join("\n", reaction.Says.Select(message => message.Text));
    }
}
