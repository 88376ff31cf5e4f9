using BenchmarkDotNet.Configs;
using BenchmarkDotNet.Running;
using HeapText.Benchmarks.Forecast;
using HeapText.Benchmarks.Hook;
using HeapText.Benchmarks.Reading;
using HeapText.Benchmarks.Recipes;

// One row a question; those of BenchmarkDotNet take its own options after the name.
switch (args)
{
    case ["hook", .. var rest]:
        var seconds = rest.Length > 0 && int.TryParse(rest[0], out var s) ? s : 5;
        var connections = rest.Length > 1 && int.TryParse(rest[1], out var c) ? c : 64;
        await HookBenchmark.Run(TimeSpan.FromSeconds(seconds), connections);
        return 0;
    case ["forecast", .. var rest]:
        BenchmarkRunner.Run<ForecastBenchmarks>(Measured(), rest);
        return 0;
    case ["recipe", .. var rest]:
        BenchmarkRunner.Run<RecipeBenchmarks>(Measured(), rest);
        RecipeSpread.Run(Console.Out);
        return 0;
    case ["read"]:
        ReadingSpread.Run(Console.Out);
        return 0;
    default:
        await Console.Error.WriteLineAsync(
            "usage: hook [seconds a round] [connections] | forecast [options] | recipe [options] | read");
        return 2;
}

static IConfig Measured() => DefaultConfig.Instance.WithArtifactsPath(Path.Combine("artifacts", "benchmarks"));
