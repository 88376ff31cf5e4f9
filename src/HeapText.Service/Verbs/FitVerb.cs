using System.CommandLine;
using System.Text.Json.Nodes;
using HeapText.Dialog.Text;

namespace HeapText.Service.Verbs;

/// <summary>The verb <c>fit</c>: what a text takes on a phone.</summary>
internal static class FitVerb
{
    public static Command Create()
    {
        var command = new Command("fit", "Counts what texts take on a phone: encoding, segments, screens.");
        var (text, lines) = TextLines.AddTo(command);
        command.SetAction(parsed =>
        {
            var (output, error) = (parsed.InvocationConfiguration.Output, parsed.InvocationConfiguration.Error);
            return parsed.GetValue(lines)
                ? RunLines(Console.In, output, error)
                : Run(parsed.GetValue(text)!, output);
        });
        return command;
    }

    internal static int Run(string text, TextWriter output)
    {
        TextLines.Write(output, AddTo([], Fit.Measure(text)));
        return ExitCodes.Done;
    }

    internal static int RunLines(TextReader input, TextWriter output, TextWriter error) =>
        TextLines.Run(input, output, error, line =>
            (AddTo(new JsonObject { ["id"] = line.Id }, Fit.Measure(line.Text)), null));

    private static JsonObject AddTo(JsonObject document, Fitting fitting)
    {
        document["encoding"] = fitting.EncodingName;
        document["units"] = fitting.Units;
        document["segments"] = fitting.Segments;
        document["segmentUnits"] = new JsonArray([.. fitting.SegmentUnits.Select(units => JsonValue.Create(units))]);
        document["ussdPages"] = fitting.UssdPages;
        return document;
    }
}
