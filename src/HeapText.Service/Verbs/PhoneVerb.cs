using System.CommandLine;
using HeapText.Carriers.Numbers;
using HeapText.Dialog.Ports;
using HeapText.Service.Startup;

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
        phone.SetAction((parsed, cancel) => Run(
            parsed.GetValue(number)!, parsed.GetValue(lang), parsed.GetValue(url)!,
            parsed.InvocationConfiguration.Error, cancel));
        return phone;
    }

    /// <summary>What a farmer would text to change the language: its own name.</summary>
    /// <exception cref="SettingsFaultsException">There are no dialogs in it.</exception>
    internal static string FirstText(string lang)
    {
        var setting = SettingsReader.Filled(ServeVerb.AddSettings(new ConfigurationBuilder()).Build()["Dialogs"]);
        var book = DialogsAtStart.Load(setting).Book;
        return book.Speaks(lang)
            ? book.File(lang).Name
            : throw new SettingsFaultsException(
                [$"--lang: there are no dialogs in '{lang}'; use one of {string.Join(", ", book.Languages)}."]);
    }

    private static async Task<int> Run(
        string written, string? lang, string address, TextWriter errors, CancellationToken cancel)
    {
        try
        {
            var reading = NumberReader.ReadPractice(written);
            if (reading is NumberReading.Bad bad) throw new SettingsFaultsException([$"--number: {bad.Why}."]);
            if (!Uri.TryCreate(address, UriKind.Absolute, out var url) || url.Scheme != Uri.UriSchemeHttp)
                throw new SettingsFaultsException([$"--url: '{address}' is not an address; write one like {UsualUrl}."]);
            var number = ((NumberReading.Good)reading).Number;
            return await Run(url, number, lang is null ? null : FirstText(lang), errors, cancel);
        }
        catch (SettingsFaultsException fault)
        {
            await errors.WriteLineAsync(fault.Message);
        }
        catch (HttpRequestException gone)
        {
            await errors.WriteLineAsync($"--url: the service at {address} does not answer: {gone.Message}");
        }

        return ExitCodes.BadInput;
    }

    private static async Task<int> Run(
        Uri url, Msisdn number, string? firstText, TextWriter errors, CancellationToken cancel)
    {
        using var service = new PracticeClient(url);
        using var stop = CancellationTokenSource.CreateLinkedTokenSource(cancel);
        var started = await service.IsThere(cancel) ? null : Start(url, errors, stop.Token);
        try
        {
            if (started is not null && !await IsUp(service, started, cancel)) return ExitCodes.BadInput;
            await new TerminalPhone(service, number, firstText, Console.In, Console.Out).Run(cancel);
            return ExitCodes.Done;
        }
        finally
        {
            await stop.CancelAsync();
            if (started is not null) await started;
        }
    }

    private static Task<int> Start(Uri url, TextWriter errors, CancellationToken stop) =>
        ServeVerb.Run([$"--Urls={url.GetLeftPart(UriPartial.Authority)}"], fresh: false, errors, errors, stop);

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
