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
        services.AddLineHttp();
        foreach (var line in lines)
        {
            services.AddSingleton<ICarrier>(provider => new NativeLine(
                line, provider.GetRequiredService<IHttpClientFactory>(), provider.GetRequiredService<TimeProvider>()));
        }

        return services;
    }
}
