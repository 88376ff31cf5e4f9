using System.Security.Cryptography;
using HeapText.Dialog.Ports;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging;

namespace HeapText.Carriers.Smpp;

/// <summary>Wires SMPP lines.</summary>
public static class SmppLines
{
    /// <summary>Adds for each line a carrier, and what keeps it connected while the host runs. What comes in goes to
    /// the <see cref="IReceiver"/>.</summary>
    public static IServiceCollection AddSmppLines(this IServiceCollection services, IEnumerable<SmppLineOptions> lines)
    {
        ArgumentNullException.ThrowIfNull(lines);
        foreach (var line in lines)
        {
            var key = "smpp " + line.Name;
            services.AddKeyedSingleton(key, (provider, _) => Link(line, provider));
            services.AddSingleton<IHostedService>(provider => provider.GetRequiredKeyedService<SmppLink>(key));
            services.AddSingleton<ICarrier>(provider =>
            {
                var time = provider.GetRequiredService<TimeProvider>();
                return new SmppLine(
                    line, provider.GetRequiredKeyedService<SmppLink>(key), new Throttle(NewRandom(), time), time,
                    provider.GetRequiredService<ILogger<SmppLine>>());
            });
        }

        return services;
    }

    private static SmppLink Link(SmppLineOptions line, IServiceProvider provider)
    {
        var time = provider.GetRequiredService<TimeProvider>();
        var inbox = new SmppInbox(
            line, provider.GetRequiredService<IReceiver>(), time, provider.GetRequiredService<ILogger<SmppInbox>>());
        return new SmppLink(
            line, inbox, new ReconnectWait(line.ReconnectFirst, line.ReconnectLongest, NewRandom()), time,
            provider.GetRequiredService<ILogger<SmppLink>>());
    }

    private static Random NewRandom() => new(RandomNumberGenerator.GetInt32(int.MaxValue));
}
