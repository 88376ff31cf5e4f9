using HeapText.Dialog.Replies;

namespace HeapText.Dialog.Tests.Replies;

public sealed class LexiconTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("heaptext-words").FullName;

    [Fact]
    public void Load_ShippedWords_HasNoFault() =>
        Assert.Equal("", string.Join("\n", TestReader.Shipped.Faults));

    [Fact]
    public void Load_ShippedWords_GivesEveryLanguageTheSameKeys()
    {
        var keys = TestReader.Shipped.Lexicons.Select(lexicon => lexicon.Phrases
            .Where(phrase => phrase.Meaning.Kind is not (MeaningKind.Number or MeaningKind.DaysAgo
                or MeaningKind.Ambiguous)
                && !phrase.Meaning.Is(Particle.Lacking) && !phrase.Meaning.Is(Particle.One)
                && !phrase.Meaning.Is(Particle.AskingFirst))
            .Select(phrase => (phrase.Meaning.Kind, phrase.Meaning.Key)).ToHashSet()).ToList();

        Assert.All(keys, own => Assert.Empty(keys[0].Except(own).Concat(own.Except(keys[0]))));
    }

    [Fact]
    public void Load_SeveralFaults_ReportsAllWithTheirPlaces()
    {
        Write("""
            language: zz
            materials:
              cow-dung: [dung, cow dung, dung]
              goat-manure: [goat dung, "cow {dung,muck}"]
              moon-dust: [moon dust]
              cow-dung: [muck]
            refused:
              plastic: []
            ambiguous: {dungs: [cow-dung, moon-dung], muck: [cow-dung]}
            measures:
              thimble: [thimble]
            numbers: {"1": [one]}
            checks:
              taste: {good: [good]}
            intents: {}
            particles: {}
            answers: {rod: {glass: [glass], wood: ["2", one]}, colour: {red: [red]}}
            colours: {}
            provenance: made up
            reviewed: false
            """);

        var faults = Lexicon.Load(_folder, new HashSet<string> { "cow-dung", "goat-manure", "plastic" }).Faults;

        Assert.Equal(
            [
                "3:30: 'dung' stands twice under 'cow-dung', first on line 3.",
                "4:28: 'cow dung' stands for both 'cow-dung' (line 3) and 'goat-manure'.",
                "5:3: Unknown material 'moon-dust'.",
                "6:3: Key 'cow-dung' stands twice.",
                "8:12: 'plastic' needs a list with at least one word.",
                "9:31: Unknown material 'moon-dung'.",
                "9:49: 'muck' needs a list of 2 to 4 materials.",
                "11:3: Unknown measure 'thimble'.",
                "14:3: Unknown check 'taste': use heat, smell, moisture or pests.",
                "17:17: Unknown answer 'glass': use wood, metal.",
                "17:40: '2' is the number of another answer to 'rod' than its own, 1.",
                "17:52: Unknown question 'colour'.",
                "18:1: Unknown section 'colours'.",
            ],
            faults.Select(fault => $"{fault.Line}:{fault.Column}: {fault.Message}"));
        Assert.All(faults, fault => Assert.Equal(Path.Combine(_folder, "zz", "words.yml"), fault.File));
    }

    [Theory]
    [InlineData("language: zz\nmaterials: [a, b\nrefused: {}", 3)]
    [InlineData("language: zz\nmaterials: *x", 2)]
    [InlineData("", 1)]
    [InlineData("- a\n- b", 1)]
    public void Load_BrokenFile_IsOneOrMoreFaultsAndNoException(string yaml, int line)
    {
        Write(yaml);

        var faults = Lexicon.Load(_folder).Faults;

        Assert.Contains(faults, fault => fault.Line == line);
    }

    [Fact]
    public void Load_NoSuchFolder_IsAFault() =>
        Assert.Single(Lexicon.Load(Path.Combine(_folder, "none")).Faults);

    [Fact]
    public void Load_WrongLanguage_IsAFault()
    {
        Write("language: en\nmaterials: {}");

        Assert.Contains(Lexicon.Load(_folder).Faults, fault => fault is { Line: 1, Column: 11 });
    }

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    private void Write(string yaml)
    {
        var folder = Directory.CreateDirectory(Path.Combine(_folder, "zz")).FullName;
        File.WriteAllText(Path.Combine(folder, "words.yml"), yaml);
    }
}
