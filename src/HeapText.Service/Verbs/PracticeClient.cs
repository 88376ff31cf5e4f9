using System.Text.Json;
using HeapText.Dialog.Ports;
using HeapText.Service.Hooks;
using HeapText.Service.Practice;
using Microsoft.AspNetCore.Mvc;
using NodaTime;
using NodaTime.Text;

namespace HeapText.Service.Verbs;

/// <summary>Talks to a practice service as the browser's phone does.</summary>
internal sealed class PracticeClient(Uri url) : IDisposable
{
    private readonly HttpClient _http = new() { BaseAddress = url, Timeout = TimeSpan.FromMinutes(5) };

    /// <summary>True when a practice service answers at the address.</summary>
    /// <exception cref="HttpRequestException">Something else answers there.</exception>
    public async Task<bool> IsThere(CancellationToken cancel)
    {
        try
        {
            using var answer = await _http.GetAsync(new Uri("/practice/clock", UriKind.Relative), cancel);
            return answer.IsSuccessStatusCode
                ? true
                : throw new HttpRequestException("what answers there is no practice service.");
        }
        catch (HttpRequestException refused) when (refused.HttpRequestError == HttpRequestError.ConnectionError)
        {
            return false;
        }
    }

    /// <summary>Sends a text; it gets its effect once however often it is sent under this id.</summary>
    /// <exception cref="HttpRequestException">It was not taken; the message says why.</exception>
    public Task Send(string id, Msisdn from, string text, CancellationToken cancel) =>
        Post<HookAccepted>("/sms/practice", new SmsMessage(id, from.Value, "practice", text, null), cancel);

    /// <summary>Rings once and hangs up.</summary>
    /// <exception cref="HttpRequestException">It was not taken; the message says why.</exception>
    public Task Ring(string id, Msisdn from, CancellationToken cancel) =>
        Post<HookAccepted>("/calls/practice", new MissedCallMessage(id, from.Value), cancel);

    /// <summary>Takes a step on a dialled screen; the same session and step get the same screen.</summary>
    /// <exception cref="HttpRequestException">It was not taken; the message says why.</exception>
    public Task<UssdScreen> Dial(string session, int step, Msisdn from, string input, CancellationToken cancel) =>
        Post<UssdScreen>("/ussd/practice", new UssdStep(session, from.Value, "*384#", input, step), cancel);

    /// <summary>What the phone got after the n-th message.</summary>
    public async Task<IReadOnlyList<MessageView>> Messages(Msisdn to, long after, CancellationToken cancel) =>
        await _http.GetFromJsonAsync<List<MessageView>>(
            new Uri($"/practice/messages?to={Uri.EscapeDataString(to.Value)}&after={after}", UriKind.Relative),
            cancel) ?? [];

    /// <summary>Moves the practice clock; returns where it then stands.</summary>
    public async Task<Instant> Advance(Duration by, CancellationToken cancel)
    {
        var period = Period.FromMilliseconds((long)Math.Ceiling(by.TotalMilliseconds)).Normalize();
        var move = new { advance = PeriodPattern.NormalizingIso.Format(period) };
        var reading = await Post<ClockReading>("/practice/clock", move, cancel);
        return InstantPattern.ExtendedIso.Parse(reading.Now).Value;
    }

    /// <summary>How long until something falls due; null when nothing waits.</summary>
    public async Task<Duration?> UntilNext(CancellationToken cancel)
    {
        var next = await _http.GetFromJsonAsync<NextWake>(new Uri("/practice/next", UriKind.Relative), cancel);
        var clock = await _http.GetFromJsonAsync<ClockReading>(new Uri("/practice/clock", UriKind.Relative), cancel);
        if (next?.At is null || clock is null) return null;
        var wait = InstantPattern.ExtendedIso.Parse(next.At).Value - InstantPattern.ExtendedIso.Parse(clock.Now).Value;
        return Duration.Max(wait, Duration.FromSeconds(1));
    }

    /// <summary>The village's time zone.</summary>
    public async Task<DateTimeZone> Zone(CancellationToken cancel)
    {
        var village = await _http.GetFromJsonAsync<VillageView>(new Uri("/practice/village", UriKind.Relative), cancel);
        return DateTimeZoneProviders.Tzdb.GetZoneOrNull(village?.Zone ?? "UTC") ?? DateTimeZone.Utc;
    }

    /// <inheritdoc/>
    public void Dispose() => _http.Dispose();

    private async Task<T> Post<T>(string path, object body, CancellationToken cancel)
    {
        using var answer = await _http.PostAsJsonAsync(path, body, JsonSerializerOptions.Web, cancel);
        if (answer.IsSuccessStatusCode)
            return (await answer.Content.ReadFromJsonAsync<T>(cancel))!;
        var problem = await answer.Content.ReadFromJsonAsync<ProblemDetails>(cancel);
        throw new HttpRequestException(problem?.Detail ?? problem?.Title, null, answer.StatusCode);
    }
}
