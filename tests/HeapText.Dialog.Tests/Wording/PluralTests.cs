using System.Globalization;
using HeapText.Dialog.Wording;

namespace HeapText.Dialog.Tests.Wording;

/// <summary>Plural forms by the rules of the Unicode CLDR, from memory.</summary>
public sealed class PluralTests
{
    private const string English = "i = 1 and v = 0", French = "i = 0,1", Amharic = "i = 0 or n = 1";

    [Theory]
    [InlineData(English, "0", "other")]
    [InlineData(English, "1", "one")]
    [InlineData(English, "1.5", "other")]
    [InlineData(English, "2", "other")]
    [InlineData(French, "0", "one")]
    [InlineData(French, "1", "one")]
    [InlineData(French, "1.5", "one")]
    [InlineData(French, "2", "other")]
    [InlineData(Amharic, "0", "one")]
    [InlineData(Amharic, "0.5", "one")]
    [InlineData(Amharic, "1", "one")]
    [InlineData(Amharic, "1.5", "other")]
    [InlineData("i % 10 = 2..4 and i % 100 != 12..14", "3", "one")]
    [InlineData("i % 10 = 2..4 and i % 100 != 12..14", "13", "other")]
    [InlineData("i % 10 = 2..4 and i % 100 != 12..14", "23", "one")]
    public void CategoryOf_NumberByItsRule_IsThatOfTheCldr(string rule, string number, string category)
    {
        var rules = new PluralRules();
        Assert.True(rules.TryAdd("one", rule));

        Assert.Equal(category, rules.CategoryOf(decimal.Parse(number, CultureInfo.InvariantCulture)));
    }

    [Theory]
    [InlineData("one", "")]
    [InlineData("one", "x = 1")]
    [InlineData("one", "n = 1 or")]
    [InlineData("one", "n % 0 = 1")]
    [InlineData("several", "n = 1")]
    public void TryAdd_WhatIsNoRule_IsRefused(string category, string rule) =>
        Assert.False(new PluralRules().TryAdd(category, rule));

    [Theory]
    [InlineData("en", "buckets", "0", "0 buckets")]
    [InlineData("en", "buckets", "1", "1 bucket")]
    [InlineData("en", "buckets", "2", "2 buckets")]
    [InlineData("en", "buckets", "1.5", "1 and a half buckets")]
    [InlineData("en", "buckets", "5", "5 buckets")]
    [InlineData("en", "pots", "1", "1 pot")]
    [InlineData("en", "steps", "1", "1 step")]
    [InlineData("en", "turns", "1", "once")]
    [InlineData("en", "turns", "5", "five times")]
    [InlineData("en", "heaps", "1", "one more heap")]
    [InlineData("en", "heaps", "2", "two more heaps")]
    [InlineData("sw", "pots", "1", "chungu 1")]
    [InlineData("sw", "pots", "5", "vyungu 5")]
    [InlineData("sw", "rounds", "1", "mzunguko 1 wa tabaka")]
    [InlineData("sw", "rounds", "5", "mizunguko 5 ya tabaka")]
    [InlineData("sw", "turns", "2", "mara mbili")]
    public void Count_OfThings_IsInTheRightForm(string language, string things, string number, string expected)
    {
        var count = new Value.Count(things, decimal.Parse(number, CultureInfo.InvariantCulture));

        Assert.Equal(expected, Repository.Dialogs.Book.Word(language, count));
    }

    [Fact]
    public void Portion_OfOneAndMore_HasTheMeasureInTheRightForm()
    {
        string Say(decimal amount) =>
            Repository.Dialogs.Book.Word("en", new Value.Portions([new Portion("cow-dung", amount, "bucket")]));

        Assert.Equal("half a bucket of cow dung", Say(0.5m));
        Assert.Equal("1 bucket of cow dung", Say(1));
        Assert.Equal("1 and a half buckets of cow dung", Say(1.5m));
        Assert.Equal("5 buckets of cow dung", Say(5));
    }

    /// <summary>A bare number stands only where nothing is counted by it: a code, a number out of several.</summary>
    [Fact]
    public void Message_NumberBeforeANoun_IsACount()
    {
        var book = Repository.Dialogs.Book.File("en");
        var bare = Catalogue.All.SelectMany(message => message.Slots.Where(slot => slot.Kind == SlotKind.Number)
            .Select(slot => (message.Key, slot.Name)));

        Assert.All(bare, one => Assert.DoesNotMatch(
            $@"\{{{one.Name}\}} (?!you |is |of |to |comes |weeks\b)[a-z]+s\b", book.Messages[one.Key].ToString()));
    }
}
