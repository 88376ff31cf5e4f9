using BenchmarkDotNet.Configs;
using BenchmarkDotNet.Running;
using HeapText.Benchmarks.Forecast;
using HeapText.Benchmarks.Hook;
using HeapText.Benchmarks.Reading;
using HeapText.Benchmarks.Recipes;
using HeapText.Benchmarks.Smpp;
using HeapText.Benchmarks.Ussd;

// One row a question; those of BenchmarkDotNet take its own options after the name.
switch (args)
{
    case ["hook", .. var rest]:
        await HookBenchmark.Run(TimeSpan.FromSeconds(Number(rest, 0, 5)), Number(rest, 1, 64));
        return 0;
    case ["ussd", .. var rest]:
        await UssdBenchmark.Run(TimeSpan.FromSeconds(Number(rest, 0, 5)), Number(rest, 1, 16));
        return 0;
    case ["smpp", .. var rest]:
        await SmppBenchmark.Run(TimeSpan.FromSeconds(Number(rest, 0, 5)), Number(rest, 1, 50));
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
            "usage: hook [seconds a round] [connections] | ussd [seconds a round] [phones] "
            + "| smpp [seconds a round] [window] | forecast [options] | recipe [options] | read");
        return 2;
}

static int Number(string[] rest, int place, int usual) =>
    rest.Length > place && int.TryParse(rest[place], out var number) ? number : usual;

static IConfig Measured() => DefaultConfig.Instance.WithArtifactsPath(Path.Combine("artifacts", "benchmarks"));
