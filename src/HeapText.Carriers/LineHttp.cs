using System.Net;
using HeapText.Dialog.Ports;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Http.Resilience;
using NodaTime;
using NodaTime.Extensions;
using Polly;
using Polly.CircuitBreaker;

namespace HeapText.Carriers;

/// <summary>The HTTP client that lines post with.</summary>
/// <remarks>
/// Quick tries again are only for posts that surely did not reach the gateway; all others wait in the outbox, which
/// outlasts a restart and keeps the order. A gateway that has not answered anything for a while is left alone,
/// whichever line it serves: the breaker is one for each authority.
/// </remarks>
public static class LineHttp
{
    /// <summary>Name of the client.</summary>
    public const string ClientName = "line";

    private const int QuickTries = 2;
    private static readonly TimeSpan QuickDelay = TimeSpan.FromMilliseconds(200);

    /// <summary>Adds the client, once however often it is asked for.</summary>
    public static IServiceCollection AddLineHttp(this IServiceCollection services)
    {
        ArgumentNullException.ThrowIfNull(services);
        if (services.Any(service => service.ServiceType == typeof(Added))) return services;
        services.AddSingleton<Added>();
        services.AddHttpClient(ClientName)
            // The line's own deadline rules; a redirect would carry a farmer's number to an address nobody configured.
            .ConfigureHttpClient(client => client.Timeout = Timeout.InfiniteTimeSpan)
            // Addresses may hold numbers and texts.
            .RemoveAllLoggers()
            .ConfigurePrimaryHttpMessageHandler(() => new SocketsHttpHandler
            {
                AllowAutoRedirect = false,
                UseCookies = false,
                PooledConnectionLifetime = TimeSpan.FromMinutes(5),
            })
            .AddResilienceHandler(ClientName, static (pipeline, context) =>
            {
                pipeline.TimeProvider = context.ServiceProvider.GetRequiredService<TimeProvider>();
                pipeline.AddRetry(Retry()).AddCircuitBreaker(Breaker());
            })
            .SelectPipelineByAuthority();
        return services;
    }

    /// <summary>Sends a request, and judges the answer.</summary>
    /// <param name="clients">Where the client comes from.</param>
    /// <param name="request">The request.</param>
    /// <param name="timeout">How long all tries together may take before the outcome counts as unknown.</param>
    /// <param name="time">The clock.</param>
    /// <param name="judge">Judges an answer of which the headers are here.</param>
    /// <param name="cancel">Gives up waiting.</param>
    internal static async ValueTask<SendOutcome> Send(
        IHttpClientFactory clients, HttpRequestMessage request, TimeSpan timeout, TimeProvider time,
        Func<HttpResponseMessage, CancellationToken, ValueTask<SendOutcome>> judge, CancellationToken cancel)
    {
        using var client = clients.CreateClient(ClientName);
        using var deadline = new CancellationTokenSource(timeout, time);
        using var either = CancellationTokenSource.CreateLinkedTokenSource(deadline.Token, cancel);
        try
        {
            using var answer = await client.SendAsync(request, HttpCompletionOption.ResponseHeadersRead, either.Token);
            return await judge(answer, either.Token);
        }
        catch (OperationCanceledException) when (deadline.IsCancellationRequested && !cancel.IsCancellationRequested)
        {
            return new SendOutcome.TryAgain(null, LineBusy: true);
        }
        catch (BrokenCircuitException)
        {
            return new SendOutcome.Busy(null);
        }
        catch (HttpRequestException fault)
        {
            return IsUnsent(fault) ? new SendOutcome.Busy(null) : new SendOutcome.TryAgain(null, LineBusy: true);
        }
    }

    /// <summary>How long an answer asks to be left alone (RFC 9110, 10.2.3: seconds, or a date); null when it does not
    /// say.</summary>
    internal static Duration? AskedToWait(HttpResponseMessage answer, TimeProvider time)
    {
        var asked = answer.Headers.RetryAfter;
        if (asked?.Delta is { } delta) return Duration.FromTimeSpan(delta);
        if (asked?.Date is not { } date) return null;
        var wait = date.ToInstant() - time.GetUtcNow().ToInstant();
        return wait > Duration.Zero ? wait : Duration.Zero;
    }

    /// <summary>True when no connection was made, so that the gateway surely has nothing.</summary>
    private static bool IsUnsent(HttpRequestException fault) => fault.HttpRequestError is
        HttpRequestError.ConnectionError or HttpRequestError.NameResolutionError
        or HttpRequestError.SecureConnectionError or HttpRequestError.ProxyTunnelError;

    private static HttpRetryStrategyOptions Retry() => new()
    {
        MaxRetryAttempts = QuickTries,
        Delay = QuickDelay,
        BackoffType = DelayBackoffType.Exponential,
        UseJitter = true,
        ShouldHandle = static attempt =>
            ValueTask.FromResult(attempt.Outcome.Exception is HttpRequestException fault && IsUnsent(fault)),
    };

    // 429 and 503 are answers: how long to leave the line alone is in them.
    private static HttpCircuitBreakerStrategyOptions Breaker() => new()
    {
        FailureRatio = 0.9,
        MinimumThroughput = 10,
        SamplingDuration = TimeSpan.FromSeconds(30),
        BreakDuration = TimeSpan.FromSeconds(15),
        ShouldHandle = static post => ValueTask.FromResult(
            post.Outcome.Exception is HttpRequestException or OperationCanceledException
            || post.Outcome.Result?.StatusCode is HttpStatusCode.BadGateway or HttpStatusCode.GatewayTimeout),
    };

    private sealed class Added;
}
