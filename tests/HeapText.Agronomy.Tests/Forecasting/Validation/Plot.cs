using System.Globalization;
using System.Security;
using System.Text;

namespace HeapText.Agronomy.Tests.Forecasting.Validation;

/// <summary>Draws a row as SVG, readable in black and white: curves by dash, the first one's band grey, reports
/// hatched.</summary>
internal static class Plot
{
    private const double Left = 56, Right = 624, Top = 16, Bottom = 300;

    private static readonly string[] Dashes = ["none", "8 4", "2 4"];

    internal static string Of(ValidationRow row)
    {
        var last = row.Series.Max(series => series.Days.Count - 1);
        var svg = new StringBuilder();
        svg.Append(CultureInfo.InvariantCulture, $"""
            <svg xmlns="http://www.w3.org/2000/svg" width="640" height="380" viewBox="0 0 640 380" role="img"
              aria-labelledby="title desc">
              <title id="title">{Escape(row.Study)}</title>
              <desc id="desc">{Escape(Describe(row))}</desc>
              <defs>
                <pattern id="hatch" width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
                  <line x1="0" y1="0" x2="0" y2="6" stroke="#000" stroke-width="1"/>
                </pattern>
              </defs>
              <rect width="640" height="380" fill="#fff"/>
              <g font-family="sans-serif" font-size="12" fill="#000">

            """);
        AppendAxes(svg, row, last);
        AppendBand(svg, row, last);
        foreach (var box in row.Boxes) AppendBox(svg, row, box, last);
        for (var i = 0; i < row.Series.Count; i++) AppendCurve(svg, row, i, last);
        foreach (var box in row.Boxes) AppendLabel(svg, row, box, last);
        return svg.Append("  </g>\n</svg>\n").ToString();
    }

    /// <summary>The plot in words.</summary>
    internal static string Describe(ValidationRow row)
    {
        var curves = row.Series.Select(series =>
        {
            var top = series.Days.Select((day, i) => (day.Likely, Day: i)).MaxBy(day => day.Likely);
            return string.Create(
                CultureInfo.InvariantCulture,
                $"{series.Name}: starts at {series.Days[0].Likely:F0}, highest {top.Likely:F0} on day {top.Day}, "
                    + $"ends at {series.Days[^1].Likely:F0}");
        });
        var boxes = row.Boxes.Select(box => string.Create(
            CultureInfo.InvariantCulture,
            $"{box.Label}: {box.Low:0.#} to {box.High:0.#}, days {box.FromDay:0.#} to {box.ToDay:0.#}"));
        return $"Predicted {row.Axis}. {string.Join("; ", curves)}. Reported, hatched. {string.Join("; ", boxes)}.";
    }

    private static void AppendAxes(StringBuilder svg, ValidationRow row, int last)
    {
        for (var value = row.Least; value <= row.Most; value += 10)
        {
            var y = Y(row, value);
            svg.Append(CultureInfo.InvariantCulture, $"""
                    <line x1="{Left}" y1="{y}" x2="{Right}" y2="{y}" stroke="#ddd"/>
                    <text x="{Left - 6}" y="{y + 4}" text-anchor="end">{value}</text>

                """);
        }

        for (var day = 0; day <= last; day += last > 60 ? 10 : 5)
        {
            svg.Append(CultureInfo.InvariantCulture, $"""
                    <text x="{X(day, last)}" y="{Bottom + 18}" text-anchor="middle">{day}</text>

                """);
        }

        svg.Append(CultureInfo.InvariantCulture, $"""
                <path d="M{Left} {Top}V{Bottom}H{Right}" fill="none" stroke="#000"/>
                <text x="{(Left + Right) / 2}" y="{Bottom + 38}" text-anchor="middle">days after building</text>
                <text x="0" y="0" text-anchor="middle" transform="translate(16 {(Top + Bottom) / 2}) rotate(-90)"
                  >{Escape(row.Axis)}</text>

            """);
    }

    private static void AppendBand(StringBuilder svg, ValidationRow row, int last)
    {
        var days = row.Series[0].Days;
        var upper = days.Select((day, i) => Point(row, i, day.High, last));
        var lower = days.Select((day, i) => Point(row, i, day.Low, last)).Reverse();
        svg.Append("    <polygon fill=\"#ccc\" points=\"").AppendJoin(' ', upper.Concat(lower)).Append("\"/>\n");
    }

    private static void AppendBox(StringBuilder svg, ValidationRow row, Box box, int last)
    {
        var (x, y) = (X(box.FromDay, last), Y(row, box.High));
        var (width, height) = (X(box.ToDay, last) - x, Y(row, box.Low) - y);
        svg.Append(CultureInfo.InvariantCulture, $"""
                <rect x="{x}" y="{y}" width="{width}" height="{height}" fill="url(#hatch)" fill-opacity="0.35"
                  stroke="#000"/>

            """);
    }

    private static void AppendLabel(StringBuilder svg, ValidationRow row, Box box, int last) =>
        svg.Append(CultureInfo.InvariantCulture, $"""
                <text x="{X(box.FromDay, last) + 3}" y="{Y(row, box.High) - 4}" stroke="#fff" stroke-width="3"
                  paint-order="stroke">{Escape(box.Label)}</text>

            """);

    private static void AppendCurve(StringBuilder svg, ValidationRow row, int i, int last)
    {
        var series = row.Series[i];
        var points = string.Join(' ', series.Days.Select((day, at) => Point(row, at, day.Likely, last)));
        var x = Left + (i * 190);
        svg.Append(CultureInfo.InvariantCulture, $"""
                <g fill="none" stroke="#000" stroke-width="2" stroke-dasharray="{Dashes[i]}">
                  <polyline points="{points}"/>
                  <line x1="{x}" y1="360" x2="{x + 36}" y2="360"/>
                </g>
                <text x="{x + 42}" y="364">{Escape(series.Name)}</text>

            """);
    }

    private static string Point(ValidationRow row, double day, double value, int last) =>
        string.Create(CultureInfo.InvariantCulture, $"{X(day, last)},{Y(row, value)}");

    private static double X(double day, int last) => Math.Round(Left + (day / last * (Right - Left)));

    private static double Y(ValidationRow row, double value) => Math.Round(
        Bottom - ((Math.Clamp(value, row.Least, row.Most) - row.Least) / (row.Most - row.Least) * (Bottom - Top)));

    private static string Escape(string text) => SecurityElement.Escape(text);
}
