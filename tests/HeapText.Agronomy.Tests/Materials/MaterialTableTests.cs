using HeapText.Agronomy.Materials;
using HeapText.Agronomy.Tests.Reference;

namespace HeapText.Agronomy.Tests.Materials;

public class MaterialTableTests
{
    [Fact]
    public void Material_OfEveryKey_HasItsRoleAndFiguresOrARefusal()
    {
        string[][] keys = [.. ReferenceRows.Of("keys.csv")];

        Assert.Equal(keys.Select(row => row[0]).Order(StringComparer.Ordinal), MaterialTable.All.Select(m => m.Key));
        Assert.All(keys, row =>
        {
            Assert.True(MaterialTable.TryFind(row[0], out var material));
            Assert.Equal(row[1], material.Role.ToString(), ignoreCase: true);
            Assert.Equal(material.IsRefused, material.Figures is null);
            Assert.Equal(material.IsRefused, material.Refusal is not null);
        });
    }

    [Theory]
    [InlineData("seaweed")]
    [InlineData("Cow-Dung")]
    [InlineData(null)]
    public void Material_OfAnUnknownKey_IsNotFound(string? key) => Assert.False(MaterialTable.TryFind(key, out _));

    [Fact]
    public void Refusal_OfEveryRefusedMaterial_StatesReasonWayOutAndSource() =>
        Assert.All(MaterialTable.All.Where(material => material.IsRefused), material =>
        {
            var refusal = material.Refusal!;
            Assert.Contains(refusal.Reason, RefusalReasons.All);
            Assert.Contains(refusal.Instead, RefusalAdvice.All);
            Assert.NotEmpty(refusal.Source);
            Assert.Matches(@"^[ACD]( \(instead [ACD]\))?$", refusal.Confidence);
        });

    [Fact]
    public void Refusal_OfAllMaterials_UsesEveryKeyOfTheLists()
    {
        Refusal[] refusals = [.. MaterialTable.All.Select(material => material.Refusal).OfType<Refusal>()];

        Assert.Equal(RefusalReasons.All.Order(), refusals.Select(refusal => refusal.Reason).Distinct().Order());
        Assert.Equal(RefusalAdvice.All.Order(), refusals.Select(refusal => refusal.Instead).Distinct().Order());
    }

    // Arsenic in the smoke and ash of treated wood: Washington State Department of Ecology, never burn it.
    // 2 m of soil and far from water: NSW Department of Primary Industries, Disposing of deceased stock.
    [Theory]
    [InlineData("treated-wood", "poison", "reuse-never-burn")]
    [InlineData("dead-animal", "carrion", "tell-livestock-officer")]
    [InlineData("battery", "poison", "hand-in")]
    [InlineData("sprayed-plant", "spray", "ask-officer-keep-off-crops")]
    [InlineData("human-faeces", "germs", "sanitation-system")]
    public void Refusal_OfWhatCanHarm_NamesTheSafeWay(string key, string reason, string instead)
    {
        Assert.True(MaterialTable.TryFind(key, out var material));

        Assert.Equal((reason, instead), (material.Refusal!.Reason, material.Refusal.Instead));
    }
}
