using System.Security.Cryptography;
using HeapText.Carriers.Mapped;
using HeapText.Carriers.Native;
using HeapText.Carriers.Smpp;
using HeapText.Dialog.Ports;
using HeapText.Service.Health;
using HeapText.Service.Hooks;
using HeapText.Service.Practice;
using HeapText.Service.Turns;
using HeapText.Service.Workers;
using Microsoft.AspNetCore.HttpOverrides;

namespace HeapText.Service.Startup;

/// <summary>Puts the web service together.</summary>
internal static class ServiceHost
{
    private static readonly TimeSpan LongestStop = TimeSpan.FromSeconds(28);

    /// <summary>The service, ready to start.</summary>
    public static WebApplication Build(WebApplicationBuilder builder, Settings settings, Parts parts)
    {
        builder.WebHost.UseUrls([.. settings.Urls]);
        builder.WebHost.ConfigureKestrel(kestrel => kestrel.AddServerHeader = false);
        if (settings.IsPractice) builder.Configuration["AllowedHosts"] = PracticeHosts(settings);
        // Addresses of hooks that take GET hold numbers and texts.
        builder.Logging.AddFilter("Microsoft.AspNetCore.Hosting.Diagnostics", LogLevel.Warning);
        builder.Services.Configure<HostOptions>(host => host.ShutdownTimeout = LongestStop);
        builder.Services.AddProblemDetails(problems => problems.CustomizeProblemDetails = Faults.Explain);
        builder.Services.AddOpenApi();
        builder.Services.AddTurns(settings, parts);
        if (parts.Practice is { } practice) builder.Services.AddPractice(practice);
        else
        {
            builder.Services.AddSingleton(parts.Time)
                .AddNativeLines(settings.Lines.OfType<NativeLineOptions>())
                .AddMappedLines(settings.Lines.OfType<MappedLineOptions>())
                .AddSmppLines(settings.Lines.OfType<SmppLineOptions>());
        }

        builder.Services.AddWorkers();
        if (settings.IsPractice) builder.Services.AddSender(InboundLine.Practice, null, null);
        foreach (var line in settings.Lines) builder.Services.AddSender(line.Name, line.Backup, settings);

        var app = builder.Build();
        if (settings.Proxies.Count > 0) app.UseForwardedHeaders(Believing(settings.Proxies));
        app.UseExceptionHandler();
        app.UseStatusCodePages();
        app.MapOpenApi();
        app.MapHealth();
        app.MapSmsHook();
        app.MapUssdHook();
        app.MapReceiptHook();
        app.MapCallHook();
        if (settings.IsPractice)
        {
            app.MapPractice();
            app.MapPhone();
        }

        return app;
    }

    // Without these, anybody could name any address in X-Forwarded-For.
    private static ForwardedHeadersOptions Believing(IReadOnlyList<System.Net.IPNetwork> proxies)
    {
        var options = new ForwardedHeadersOptions
        {
            ForwardedHeaders = ForwardedHeaders.XForwardedFor | ForwardedHeaders.XForwardedProto,
            ForwardLimit = null,
        };
        options.KnownIPNetworks.Clear();
        options.KnownProxies.Clear();
        foreach (var proxy in proxies) options.KnownIPNetworks.Add(proxy);
        return options;
    }

    // Names only this machine answers to, so that no page elsewhere reaches it by a name of its own.
    private static string PracticeHosts(Settings settings) =>
        string.Join(';', settings.Urls.Select(url => new Uri(url).Host).Union(["localhost", "127.0.0.1", "[::1]"]));

    private static void AddTurns(this IServiceCollection services, Settings settings, Parts parts)
    {
        services.AddSingleton(settings);
        services.AddSingleton(_ => parts.Store);
        services.AddSingleton(parts.Conversation);
        services.AddSingleton(parts.Groups);
        services.AddSingleton(parts.Words);
        services.AddSingleton(new MaterialNames(parts.Book));
        services.AddSingleton(provider => new WordDesk(provider.GetRequiredService<IStore>(), settings.Office()));
        services.AddSingleton(InboundLine.From(settings));
        services.AddSingleton<WorkSignals>();
        services.AddSingleton<LastCommit>();
        services.AddSingleton(provider => new TurnRunner(
            provider.GetRequiredService<IStore>(), parts.Conversation, provider.GetRequiredService<WorkSignals>(),
            provider.GetRequiredService<TimeProvider>(), provider.GetRequiredService<ILogger<TurnRunner>>())
        {
            OnHeard = provider.GetService<PracticeGateway>() is { } gateway ? gateway.Heard : static (_, _) => { },
        });
        services.AddSingleton<IReceiver>(provider => provider.GetRequiredService<TurnRunner>());
    }

    private static void AddPractice(this IServiceCollection services, PracticeParts practice)
    {
        services.AddSingleton(practice.Clock);
        services.AddSingleton<TimeProvider>(practice.Clock);
        services.AddSingleton(_ => practice.Journal);
        services.AddSingleton<PracticeGateway>();
        services.AddSingleton<ICarrier>(provider => provider.GetRequiredService<PracticeGateway>());
        services.AddSingleton<PracticeTime>();
        services.AddSingleton<DemoVillage>();
    }

    private static void AddWorkers(this IServiceCollection services)
    {
        services.AddSingleton(_ => new Backoff(new Random(RandomNumberGenerator.GetInt32(int.MaxValue))));
        services.AddSingleton<WordWorker>();
        services.AddHostedService(provider => provider.GetRequiredService<WordWorker>());
        services.AddSingleton<DueWorker>();
        services.AddHostedService(provider => provider.GetRequiredService<DueWorker>());
    }

    /// <summary>A sender for one line; without settings it sends without limit.</summary>
    private static void AddSender(this IServiceCollection services, string line, string? backup, Settings? settings)
    {
        services.AddKeyedSingleton(line, (provider, _) => new SenderWorker(
            RouteOf(provider, line), backup is null ? null : RouteOf(provider, backup),
            provider.GetRequiredService<IStore>(), provider.GetRequiredService<WorkSignals>(),
            provider.GetRequiredService<Backoff>(), provider.GetRequiredService<TimeProvider>(),
            provider.GetRequiredService<ILogger<SenderWorker>>()));
        services.AddSingleton<IHostedService>(provider => provider.GetRequiredKeyedService<SenderWorker>(line));

        OutboundRoute RouteOf(IServiceProvider provider, string name) => new(
            provider.GetServices<ICarrier>().Single(carrier => carrier.Line == name),
            settings?.Spend.BudgetOf(settings.Lines.Single(one => one.Name == name)));
    }
}
