using System.Globalization;
using System.Text;

namespace HeapText.Agronomy.Tests.Forecasting.Validation;

/// <summary>Writes docs/agronomy/validation.md from the rows.</summary>
internal static class ValidationPage
{
    internal static IReadOnlyList<ValidationRow> Rows { get; } = [.. SizeRows.All, .. PlantRows.All, .. ManureRows.All];

    internal static string Text()
    {
        var page = new StringBuilder(Introduction());
        page.Append("| study | measured | reported | predicted (band) | verdict |\n| --- | --- | --- | --- | --- |\n");
        foreach (var row in Rows)
        {
            foreach (var claim in row.Claims)
            {
                string[] cells =
                [
                    $"[{row.Study}](#{row.Key}){(row.IsFitted ? ", fitted" : "")}",
                    claim.What, Reported(claim), Predicted(claim), Word(claim.Recorded),
                ];
                page.Append("| ").AppendJoin(" | ", cells).Append(" |\n");
            }
        }

        foreach (var row in Rows) AppendRow(page, row);
        return page.ToString();
    }

    private static string Introduction()
    {
        var all = Rows.SelectMany(row => row.Claims).ToList();
        var held = Rows.Where(row => !row.IsFitted).SelectMany(row => row.Claims).ToList();
        return $"""
            # The forecast against measured behaviour

            {Wrap("""
            Written by `ValidationPageTests`; `HEAPTEXT_ACCEPT=1` writes it anew. One plot for each study whose figures
            were reached. No day-by-day series was, so curves stand against reported ranges. Grey is the band of the
            first curve; hatched is what was reported.
            """)}
            {Wrap($"""
            **Verdicts.** *Hit*: the likely value lies in the reported range. *In band*: it does not, but the band
            reaches the range; wide bands make that cheap. *Miss*: neither. {Tally(all)} Of the studies not used in
            fitting: {Tally(held)} A test holds every verdict to this page: a hit must stay one.
            """)}
            {Wrap("""
            **What was fitted.** One set of constants serves all heaps. Fast and medium rate, growth, draught and its
            ceiling, settling time and the bound of stability were set by hand so that a 4 m3 garden heap (sizes) got
            hot in time and water hyacinth did not, the litter heap cooled within months, and farm heaps as the recipe
            builds them were ready in 8-14 weeks and kept the planning values of volume. The other studies were set
            aside, yet runs of them were on the screen meanwhile: this is no blind test. The ceiling of the draught, the
            bound of stability and the weekly watering came last, once heaps as the recipe builds them had been seen
            never to finish; verdicts were looked at after each. No constant belongs to a study.
            """)}
            {Wrap("""
            **What was assumed.** Amounts, sizes and air temperature are mostly not reported. They were chosen by
            reported C/N, moisture and custom, and are stated with each plot. Not all were chosen before looking:
            between the early runs and this page the mixes of the garden heaps, the coffee waste, the straw and sawdust
            bedding, the stover, the litter and the rice straw were brought nearer to the reported C/N, moisture or air
            space, and the maize stalks of the tithonia heaps were taken as chopped.
            """)}
            {Wrap("""
            **What to take from it.** Heat comes in time, and in the right order by size, packing, wetness and straw.
            Peaks of heaps are within about 5 °C, but loose litter runs far too hot and vessels below half a cubic metre
            far too cool. Carbon is lost too slowly. Small insulated vessels, forced air, pits, mud coats, acidity and
            lack of oxygen are not represented.
            """)}

            """;
    }

    private static void AppendRow(StringBuilder page, ValidationRow row)
    {
        var fitted = row.IsFitted ? "Used in fitting." : "Not used in fitting.";
        page.Append(CultureInfo.InvariantCulture, $"""

            <a id="{row.Key}"></a>

            ## {row.Study}

            {Wrap($"*Reported:* {row.Reported}")}
            {Wrap($"*Assumed:* {row.Assumed} {fitted}")}
            ![{Plot.Describe(row)}](plots/{row.Key}.svg)

            {Wrap(row.Discussion).TrimEnd()}

            """);
    }

    private static string Wrap(string text)
    {
        const int width = 112;
        var (wrapped, used) = (new StringBuilder(), 0);
        foreach (var word in text.Split([' ', '\n'], StringSplitOptions.RemoveEmptyEntries))
        {
            var fits = used + word.Length < width;
            wrapped.Append(used == 0 ? "" : fits ? " " : "\n").Append(word);
            used = fits ? used + word.Length + 1 : word.Length + 1;
        }

        return wrapped.Append('\n').ToString();
    }

    private static string Tally(List<Claim> claims) => string.Create(
        CultureInfo.InvariantCulture,
        $"{Count(claims, Verdict.Hit)} hits, {Count(claims, Verdict.InBand)} in band, "
            + $"{Count(claims, Verdict.Miss)} misses of {claims.Count}.");

    private static int Count(List<Claim> claims, Verdict verdict) => claims.Count(claim => claim.Recorded == verdict);

    private static string Reported(Claim claim) => claim.Low.Equals(claim.High)
        ? string.Create(CultureInfo.InvariantCulture, $"{claim.Low:0.#}")
        : string.Create(CultureInfo.InvariantCulture, $"{claim.Low:0.#} to {claim.High:0.#}");

    private static string Predicted(Claim claim)
    {
        var (low, likely, high) = (claim.Predicted.Low, claim.Predicted.Likely, claim.Predicted.High);
        return low.Equals(high)
            ? likely.ToString("F0", CultureInfo.InvariantCulture)
            : string.Create(CultureInfo.InvariantCulture, $"{likely:F0} ({low:F0} to {high:F0})");
    }

    private static string Word(Verdict verdict) => verdict switch
    {
        Verdict.Hit => "hit",
        Verdict.InBand => "in band",
        _ => "miss",
    };
}
