using System.CommandLine;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;
using HeapText.Agronomy;

namespace HeapText.Service.Verbs;

/// <summary>A verb that reads one JSON document and writes one: exit 0 done, 1 bad input said in one line.</summary>
internal static class JsonVerb
{
    private static readonly JsonSerializerOptions Options = new(JsonSerializerDefaults.Web)
    {
        PropertyNameCaseInsensitive = false,
        NumberHandling = JsonNumberHandling.Strict,
        UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow,
        AllowDuplicateProperties = false,
        WriteIndented = true,
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
        Converters = { new ShortNumbers() },
    };

    /// <summary>A command that runs a verb on the console.</summary>
    internal static Command Command(string name, string description, Func<TextReader, TextWriter, TextWriter, int> run)
    {
        var command = new Command(name, description);
        command.SetAction(parsed => run(
            Console.In, parsed.InvocationConfiguration.Output, parsed.InvocationConfiguration.Error));
        return command;
    }

    /// <summary>Reads a document, hands it over, and writes the answer or the fault.</summary>
    internal static int Run<TInput, TOutput>(
        TextReader input, TextWriter output, TextWriter error, Func<TInput, (TOutput?, InputFault?)> answer)
        where TInput : class
    {
        var (document, fault) = Read<TInput>(input.ReadToEnd());
        TOutput? result = default;
        if (document is not null)
        {
            (result, fault) = answer(document);
        }

        if (fault is not null)
        {
            error.WriteLine(fault);
            return ExitCodes.BadInput;
        }

        output.WriteLine(JsonSerializer.Serialize(result, Options));
        return ExitCodes.Done;
    }

    private static (T?, InputFault?) Read<T>(string text)
        where T : class
    {
        try
        {
            return JsonSerializer.Deserialize<T>(text, Options) is { } document
                ? (document, null)
                : (null, new InputFault("input", "must be a JSON object"));
        }
        catch (JsonException exception)
        {
            return (null, Describe(exception));
        }
    }

    private static InputFault Describe(JsonException exception)
    {
        var path = exception.Path is { Length: > 2 } full && full.StartsWith("$.", StringComparison.Ordinal)
            ? full[2..]
            : "input";
        return new InputFault(path, exception.Message switch
        {
            var text when text.Contains("could not be mapped", StringComparison.Ordinal) => "is no known property",
            var text when text.Contains("could not be converted", StringComparison.Ordinal) => "has the wrong type",
            var text when text.Contains("Duplicate property", StringComparison.Ordinal) => "is given twice",
            _ => $"is malformed JSON at line {exception.LineNumber + 1}, byte {exception.BytePositionInLine + 1}",
        });
    }

    /// <summary>Writes numbers without the noise of binary fractions; reads them as they are.</summary>
    private sealed class ShortNumbers : JsonConverter<double>
    {
        private const int Decimals = 9;

        public override double Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
            reader.TokenType == JsonTokenType.Number
                ? reader.GetDouble()
                : throw new JsonException("could not be converted");

        public override void Write(Utf8JsonWriter writer, double value, JsonSerializerOptions options) =>
            writer.WriteNumberValue(Math.Round(value, Decimals));
    }
}
