using System.Globalization;
using HeapText.Dialog.Text;
using NodaTime;

namespace HeapText.Dialog.Wording;

/// <summary>Puts messages into words, in every language under dialogs/.</summary>
public sealed class Phrasebook
{
    /// <summary>Most letters of a village's or trainer's name in a message.</summary>
    public const int LongestName = 24;

    private readonly Dictionary<string, TextFile> _files;
    private readonly Dictionary<string, Spoken> _spoken;

    internal Phrasebook(IReadOnlyCollection<TextFile> files)
    {
        _files = files.ToDictionary(f => f.Language);
        _spoken = files.ToDictionary(f => f.Language, f => new Spoken(f));
    }

    /// <summary>Codes of the languages, in alphabetical order.</summary>
    public IEnumerable<string> Languages => _files.Keys.Order(StringComparer.Ordinal);

    /// <summary>The file of a language.</summary>
    public TextFile File(string language) => _files[language];

    /// <summary>True when messages can be written in this language.</summary>
    public bool Speaks(string language) => _files.ContainsKey(language);

    /// <summary>A message in words. A list of materials that does not fit is cut to "… and 3 more".</summary>
    public string Say(string language, MessageSpec message, params ReadOnlySpan<(string Slot, Value Value)> filling)
    {
        Dictionary<string, Value> values = [];
        foreach (var (slot, value) in filling) values.Add(slot, value);
        var text = Fill(language, message, values);
        var most = message.SegmentsIn(_files[language].Alphabet);
        while (Fit.Measure(text).Segments > most && Shorten(values)) text = Fill(language, message, values);
        return text;
    }

    /// <summary>True when the message keeps its budget with these values.</summary>
    public bool Fits(
        string language, MessageSpec message, string prefix, params ReadOnlySpan<(string Slot, Value Value)> filling) =>
        Fit.Measure(prefix + Say(language, message, filling)).Segments
            <= message.SegmentsIn(_files[language].Alphabet);

    /// <summary>"Heap 2: ", said before messages of a heap on a phone with several.</summary>
    public string HeapPrefix(string language, int heap) => Form(language, "heap-prefix", ("number", Figure(heap)));

    private string Fill(string language, MessageSpec message, Dictionary<string, Value> values)
    {
        var file = _files[language];
        var text = file.Messages[message.Key].Fill(slot => Word(language, values[slot])).TrimEnd();
        return file.Alphabet == "GSM7" ? file.Replace.Apply(text) : text;
    }

    /// <summary>Cuts the last item off a list of materials or languages; false when there is none to cut.</summary>
    private static bool Shorten(Dictionary<string, Value> values)
    {
        foreach (var (slot, value) in values)
        {
            Value? shorter = value switch
            {
                Value.Materials { Keys.Count: > 1 } list =>
                    new Value.Materials([.. list.Keys.SkipLast(1)]) { LeftOut = list.LeftOut + 1 },
                Value.Words { Written.Count: > 1 } words =>
                    new Value.Words([.. words.Written.SkipLast(1)]) { LeftOut = words.LeftOut + 1 },
                Value.LanguageHints { Languages.Count: > 1 } hints =>
                    new Value.LanguageHints([.. hints.Languages.SkipLast(1)]),
                _ => null,
            };
            if (shorter is null) continue;
            values[slot] = shorter;
            return true;
        }
        return false;
    }

    /// <summary>A value in words, as it stands in a message.</summary>
    internal string Word(string language, Value value) => value switch
    {
        Value.Number number => Figure(number.Figure),
        Value.Count count => CountInWords(language, count.Key, count.Amount),
        Value.Ordinal ordinal => Form(language, "turning",
            (Spoken.Ordinal, _spoken[language].AsOrdinal(ordinal.Place)),
            (Spoken.OrdinalFeminine, _spoken[language].AsOrdinal(ordinal.Place, feminine: true))),
        Value.Buckets buckets => BucketsInWords(language, buckets.Amount),
        Value.Metres metres =>
            Form(language, "metres", ("length", Decimal(language, (decimal)metres.Length, "0.#"))),
        Value.Date date => DateInWords(language, date.Day),
        Value.Hour hour => _files[language].Hours[hour.HourOfDay],
        Value.Name name => name.Text.Length <= LongestName ? name.Text : name.Text[..LongestName],
        Value.Material material => _files[language].Materials[material.Key],
        Value.Materials materials => MaterialsInWords(language, materials),
        Value.Words words => Listed(language, words.Written.Select(w => Quoted(language, w)), words.LeftOut),
        Value.Portions portions => Spoken.List(
            portions.Items.Select(p => PortionInWords(language, p)), And(language), Comma(language)),
        Value.Measure measure => _files[language].Measures[measure.Key].Other.ToString(),
        Value.Measured measured => MeasuredInWords(language, measured),
        Value.Cause cause => _files[language].Causes[cause.Key],
        Value.Actions actions => string.Join(' ', actions.Keys.Select(key => _files[language].Actions[key])),
        Value.Crop crop => _files[language].Crops[crop.Key],
        Value.Money money => $"{money.Currency} {RoundedToTwoFigures(money.Amount)}",
        Value.Heaps heaps => string.Join(Comma(language), heaps.Items.Select(heap => Form(language, "heap-built",
            ("number", Figure(heap.Number)), ("date", DateInWords(language, heap.BuiltOn))))),
        Value.Choices choices =>
            string.Join(Comma(language), choices.Items.Select((item, i) => $"{Figure(i + 1)} {Word(language, item)}")),
        Value.LanguageHints hints => string.Join(". ",
            hints.Languages.Select(l => Say(l, Catalogue.LanguageHint))),
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    private string MaterialsInWords(string language, Value.Materials materials)
    {
        var names = materials.Keys.Select(key => _files[language].Materials[key]);
        return Listed(language, names, materials.LeftOut);
    }

    private string Listed(string language, IEnumerable<string> names, int leftOut) => leftOut == 0
        ? Spoken.List(names, And(language), Comma(language))
        : $"{string.Join(Comma(language), names)} {Form(language, "more", ("count", Figure(leftOut)))}";

    /// <summary>A farmer's own word; dots where its letters would double the parts of the message.</summary>
    private string Quoted(string language, string word)
    {
        var fits = _files[language].Alphabet != "GSM7" || Fit.Measure(word).Encoding == TextEncoding.Gsm7;
        return $"\"{(!fits ? "..." : word.Length <= LongestName ? word : word[..LongestName])}\"";
    }

    private string PortionInWords(string language, Portion portion)
    {
        var measure = _files[language].Measures[portion.Measure];
        var material = _files[language].Materials[portion.Material];
        if (portion.Amount == 0.5m)
            return Form(language, "portion-half", ("measure", measure.One.ToString()), ("material", material));
        return Form(language, "portion", ("amount", Amount(language, portion.Amount)),
            ("measure", MeasureWord(language, portion.Measure, portion.Amount)), ("material", material));
    }

    private string MeasuredInWords(string language, Value.Measured measured)
    {
        var measure = _files[language].Measures[measured.Unit];
        if (measured.Amount == 0.5m) return Form(language, "measured-half", ("measure", measure.One.ToString()));
        return Form(language, "measured", ("amount", Amount(language, measured.Amount)),
            ("measure", MeasureWord(language, measured.Unit, measured.Amount)));
    }

    private string MeasureWord(string language, string measure, decimal amount)
    {
        var file = _files[language];
        return file.Measures[measure].For(file.Plurals.CategoryOf(amount)).ToString();
    }

    private string CountInWords(string language, string key, decimal amount)
    {
        var file = _files[language];
        return file.Counts[key].For(file.Plurals.CategoryOf(amount)).Fill(slot => slot switch
        {
            Spoken.Number => _spoken[language].InWords((int)amount),
            Spoken.NumberFeminine => _spoken[language].InWords((int)amount, feminine: true),
            _ => Amount(language, amount),
        });
    }

    private static string RoundedToTwoFigures(double amount)
    {
        var unit = Math.Pow(10, Math.Max(0, Math.Floor(Math.Log10(Math.Max(1, amount))) - 1));
        return (Math.Round(amount / unit) * unit).ToString("0", CultureInfo.InvariantCulture);
    }

    private string BucketsInWords(string language, decimal amount) =>
        amount == 0.5m ? Form(language, "bucket-half") : CountInWords(language, "buckets", amount);

    /// <summary>An amount in words: "3", "3 and a half"; another fraction, such as 1.25, in figures.</summary>
    private string Amount(string language, decimal amount)
    {
        var whole = decimal.Truncate(amount);
        if (amount == whole) return Form(language, "whole", ("count", Figure((int)whole)));
        return amount - whole == 0.5m
            ? Form(language, "whole-and-half", ("count", Figure((int)whole)))
            : Decimal(language, amount, "0.##");
    }

    private string DateInWords(string language, LocalDate day) => Form(language, "date",
        ("weekday", _files[language].Weekdays[(int)day.DayOfWeek - 1]), ("day", DayOfMonth(language, day.Day)),
        ("month", _files[language].Months[day.Month - 1]));

    /// <summary>A figure; the first is worded where the language does so, as in "1er mars".</summary>
    private string DayOfMonth(string language, int day) =>
        day == 1 && Optional(language, "first-of-month") is { } first ? first : Figure(day);

    private string And(string language) => Form(language, "and");

    /// <summary>What parts the items of a list, with the space after it.</summary>
    private string Comma(string language) => Optional(language, "comma") is { } comma ? comma + " " : ", ";

    /// <summary>A figure that need not be whole, with the decimal mark of the language.</summary>
    private string Decimal(string language, decimal amount, string format) =>
        amount.ToString(format, CultureInfo.InvariantCulture)
            .Replace(".", Optional(language, "decimal-mark") ?? ".", StringComparison.Ordinal);

    private string? Optional(string language, string form) =>
        _files[language].Forms.TryGetValue(form, out var words) ? words.ToString() : null;

    private string Form(string language, string key, params ReadOnlySpan<(string Slot, string Word)> words)
    {
        Dictionary<string, string> filling = [];
        foreach (var (slot, word) in words) filling.Add(slot, word);
        return _files[language].Forms[key].Fill(slot => filling[slot]);
    }

    private static string Figure(int number) => number.ToString(CultureInfo.InvariantCulture);
}
