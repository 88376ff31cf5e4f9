using HeapText.Benchmarks.Hook;

if (args is not ["hook", ..])
{
    await Console.Error.WriteLineAsync("usage: hook [seconds a round] [connections]");
    return 2;
}

var seconds = args.Length > 1 && int.TryParse(args[1], out var s) ? s : 5;
var connections = args.Length > 2 && int.TryParse(args[2], out var c) ? c : 64;
await HookBenchmark.Run(TimeSpan.FromSeconds(seconds), connections);
return 0;
