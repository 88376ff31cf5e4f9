using System.CommandLine;
using System.Globalization;
using HeapText.Carriers.Numbers;
using HeapText.Dialog.Ports;

namespace HeapText.Service.Verbs;

/// <summary>phone: a basic phone in the terminal, against a practice service.</summary>
internal static class PhoneVerb
{
    private const string FirstNumber = "+99910000001";
    private const string UsualUrl = "http://127.0.0.1:5080";
    private static readonly TimeSpan LongestStart = TimeSpan.FromSeconds(60);

    /// <summary>The command.</summary>
    public static Command Create()
    {
        var number = new Option<string>("--number")
        {
            Description = "The phone's number, +999….",
            DefaultValueFactory = _ => FirstNumber,
        };
        var lang = new Option<string?>("--lang")
        {
            Description = "Ask for this language first, like sw: its own name is the first text.",
        };
        var url = new Option<string>("--url")
        {
            Description = "Address of the practice service; one is started where none runs.",
            DefaultValueFactory = _ => UsualUrl,
        };
        var phone = new Command("phone", "A basic phone in the terminal, against a practice service.")
        {
            number, lang, url,
        };
        phone.SetAction((parsed, cancel) =>
            Run(parsed.GetValue(number)!, parsed.GetValue(lang), parsed.GetValue(url)!, cancel));
        return phone;
    }

    private static async Task<int> Run(string written, string? lang, string address, CancellationToken cancel)
    {
        var reading = NumberReader.ReadPractice(written);
        if (reading is not NumberReading.Good number)
        {
            await Console.Error.WriteLineAsync($"--number: {((NumberReading.Bad)reading).Why}.");
            return ExitCodes.BadInput;
        }

        if (lang is not null && NameOf(lang) is null)
        {
            await Console.Error.WriteLineAsync($"--lang: '{lang}' is not a language; write its two letters, like sw.");
            return ExitCodes.BadInput;
        }

        if (!Uri.TryCreate(address, UriKind.Absolute, out var url) || url.Scheme != Uri.UriSchemeHttp)
        {
            await Console.Error.WriteLineAsync($"--url: '{address}' is not an address; write one like {UsualUrl}.");
            return ExitCodes.BadInput;
        }

        return await Run(url, number.Number, NameOf(lang), cancel);
    }

    private static async Task<int> Run(Uri url, Msisdn number, string? firstText, CancellationToken cancel)
    {
        using var service = new PracticeClient(url);
        using var stop = CancellationTokenSource.CreateLinkedTokenSource(cancel);
        var started = await service.IsThere(cancel) ? null : Start(url, stop.Token);
        try
        {
            if (started is not null && !await IsUp(service, started, cancel)) return ExitCodes.BadInput;
            await new TerminalPhone(service, number, firstText, Console.In, Console.Out).Run(cancel);
            return ExitCodes.Done;
        }
        catch (HttpRequestException gone)
        {
            await Console.Error.WriteLineAsync($"The service at {url} does not answer: {gone.Message}");
            return ExitCodes.BadInput;
        }
        finally
        {
            await stop.CancelAsync();
            if (started is not null) await started;
        }
    }

    // What a farmer would text to change the language.
    private static string? NameOf(string? lang) =>
        CultureInfo.GetCultures(CultureTypes.NeutralCultures)
            .FirstOrDefault(culture => culture.Name == lang)?.NativeName;

    private static Task<int> Start(Uri url, CancellationToken stop) =>
        ServeVerb.Run([$"--Urls={url.GetLeftPart(UriPartial.Authority)}"], fresh: false, Console.Error, Console.Error, stop);

    private static async Task<bool> IsUp(PracticeClient service, Task<int> started, CancellationToken cancel)
    {
        using var deadline = CancellationTokenSource.CreateLinkedTokenSource(cancel);
        deadline.CancelAfter(LongestStart);
        while (!started.IsCompleted)
        {
            if (await service.IsThere(deadline.Token)) return true;
            await Task.Delay(TimeSpan.FromMilliseconds(100), TimeProvider.System, deadline.Token);
        }

        return false;
    }
}
