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
        services.AddLineHttp();
        foreach (var line in lines)
        {
            services.AddSingleton<ICarrier>(provider => new MappedLine(
                line, provider.GetRequiredService<IHttpClientFactory>(), provider.GetRequiredService<TimeProvider>()));
        }

        return services;
    }
}
