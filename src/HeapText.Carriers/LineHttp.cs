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
/// outlasts a restart and keeps the order. A gateway that has not answered anything for a while is left alone, whichever
/// line it serves: the breaker is one for each authority.
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

    /// <summary>How long an answer asks to be left alone; null when it does not say.</summary>
    /// <remarks>Source: RFC 9110, section 10.2.3: seconds, or a date.</remarks>
    internal static Duration? AskedToWait(HttpResponseMessage answer, TimeProvider time)
    {
        var asked = answer.Headers.RetryAfter;
        if (asked?.Delta is { } delta) return Duration.FromTimeSpan(delta);
        if (asked?.Date is not { } date) return null;
        var wait = date.ToInstant() - time.GetUtcNow().ToInstant();
        return wait > Duration.Zero ? wait : Duration.Zero;
    }

    /// <summary>What a post that got no answer comes to.</summary>
    /// <exception cref="ArgumentException">The fault is none that a post ends with.</exception>
    internal static SendOutcome OutcomeOf(Exception fault) => fault switch
    {
        BrokenCircuitException => new SendOutcome.Busy(null),
        HttpRequestException failed when IsUnsent(failed) => new SendOutcome.Busy(null),
        HttpRequestException => new SendOutcome.TryAgain(null, LineBusy: true),
        _ => throw new ArgumentException("No fault of a post.", nameof(fault), fault),
    };

    /// <summary>True for faults that a post ends with when no answer came.</summary>
    internal static bool IsOfThePost(Exception fault) => fault is HttpRequestException or BrokenCircuitException;

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
