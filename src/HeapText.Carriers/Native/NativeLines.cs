using HeapText.Dialog.Ports;
using Microsoft.Extensions.DependencyInjection;

namespace HeapText.Carriers.Native;

/// <summary>Wires native lines.</summary>
public static class NativeLines
{
    /// <summary>Adds a carrier for each line.</summary>
    public static IServiceCollection AddNativeLines(
        this IServiceCollection services, IEnumerable<NativeLineOptions> lines)
    {
        ArgumentNullException.ThrowIfNull(lines);
        services.AddHttpClient(NativeLine.ClientName)
            // The line's own deadline rules; a redirect would carry a farmer's number to an address nobody configured.
            .ConfigureHttpClient(client => client.Timeout = Timeout.InfiniteTimeSpan)
            .ConfigurePrimaryHttpMessageHandler(() => new SocketsHttpHandler
            {
                AllowAutoRedirect = false,
                UseCookies = false,
                PooledConnectionLifetime = TimeSpan.FromMinutes(5),
            });
        foreach (var line in lines)
        {
            services.AddSingleton<ICarrier>(provider => new NativeLine(
                line, provider.GetRequiredService<IHttpClientFactory>(), provider.GetRequiredService<TimeProvider>()));
        }

        return services;
    }
}
