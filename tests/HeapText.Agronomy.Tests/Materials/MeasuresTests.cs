using HeapText.Agronomy.Materials;

namespace HeapText.Agronomy.Tests.Materials;

public class MeasuresTests
{
    private static readonly string[] Keys =
    [
        "wheelbarrow", "bucket", "small-bucket", "jerrycan", "basin", "sack", "small-sack", "headload", "bundle",
        "armful", "handful", "basket", "shovel", "ox-cart", "donkey-cart", "kg", "litre",
    ];

    [Fact]
    public void Measures_ByDefault_KnowEveryKey()
    {
        Assert.All(Keys, key => Assert.True(Measures.Default.IsKnown(key), key));
        Assert.Equal(Keys.Length - 1, Measures.Default.All.Count);
        Assert.False(Measures.Default.IsKnown("cup"));
    }

    [Fact]
    public void Measures_ByDefault_StateASourceAndHowSure() => Assert.All(Measures.Default.All, measure =>
    {
        Assert.NotEmpty(measure.Source);
        Assert.Contains(measure.Confidence, "ACD", StringComparison.Ordinal);
    });

    // A debe holds 20 L: coffee planting guide, paperzz.com/doc/6844693.
    [Fact]
    public void Bucket_ByDefault_HoldsOneDebe() => Assert.Equal(20, Measures.Default.VolumeOf("bucket").Litres);

    [Fact]
    public void Measures_WithADistrictsOwn_LeaveTheRestAlone()
    {
        var own = Measures.Default.With(new Dictionary<string, double> { ["wheelbarrow"] = 80 });

        Assert.Equal(80, own.VolumeOf("wheelbarrow").Litres);
        Assert.Equal(20, own.VolumeOf("bucket").Litres);
        Assert.Equal(65, Measures.Default.VolumeOf("wheelbarrow").Litres);
    }

    [Theory]
    [InlineData("bucket", 0)]
    [InlineData("bucket", double.NaN)]
    [InlineData("bucket", 10_001)]
    [InlineData("kg", 1)]
    [InlineData("litre", 2)]
    [InlineData("cup", 2)]
    public void Measures_WithWhatCannotBe_NameTheField(string key, double litres)
    {
        var own = new Dictionary<string, double> { [key] = litres };

        Assert.Equal(key, Measures.Default.Check(own)?.Field);
        Assert.Throws<ArgumentException>(() => Measures.Default.With(own));
    }
}
