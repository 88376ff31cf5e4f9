using BenchmarkDotNet.Attributes;
using HeapText.Agronomy.Recipes;

namespace HeapText.Benchmarks.Recipes;

/// <summary>How long one recipe takes, by how many materials there are and how hard the stock is.</summary>
[MemoryDiagnoser]
[MedianColumn]
public class RecipeBenchmarks
{
    private RecipeRequest _request = new() { Stock = [] };

    /// <summary>The stock; what its name counts is materials.</summary>
    [Params("typical-4", "typical-8", "typical-12", "tight-12", "too-wet", "only-brown", "empty")]
    public string Stock { get; set; } = "";

    [GlobalSetup]
    public void Prepare() => _request = new RecipeRequest { Stock = NamedStocks.Of(Stock) };

    [Benchmark(Baseline = true)]
    public RecipeResult OneHeap() => RecipeSolver.Solve(_request);

    [Benchmark]
    public RecipeResult AllHeaps() => RecipeSolver.Solve(_request with { WithMore = true });
}
