using HeapText.Dialog.Ports;
using Microsoft.Extensions.DependencyInjection;

namespace HeapText.Carriers.Mapped;

/// <summary>Wires mapped lines.</summary>
public static class MappedLines
{
    /// <summary>Adds a carrier for each line.</summary>
    public static IServiceCollection AddMappedLines(
        this IServiceCollection services, IEnumerable<MappedLineOptions> lines)
    {
        ArgumentNullException.ThrowIfNull(lines);
        services.AddHttpClient(MappedLine.ClientName)
            // The line's own deadline rules; a redirect would carry a farmer's number to an address nobody configured.
            .ConfigureHttpClient(client => client.Timeout = Timeout.InfiniteTimeSpan)
            // Addresses may hold numbers and texts.
            .RemoveAllLoggers()
            .ConfigurePrimaryHttpMessageHandler(() => new SocketsHttpHandler
            {
                AllowAutoRedirect = false,
                UseCookies = false,
                PooledConnectionLifetime = TimeSpan.FromMinutes(5),
            });
        foreach (var line in lines)
        {
            services.AddSingleton<ICarrier>(provider => new MappedLine(
                line, provider.GetRequiredService<IHttpClientFactory>(), provider.GetRequiredService<TimeProvider>()));
        }

        return services;
    }
}
