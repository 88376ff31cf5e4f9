using System.Xml.Linq;

namespace HeapText.Service.Tests.Rules;

/// <summary>The arrows between the projects run one way.</summary>
public sealed class ProjectReferenceTests
{
    [Theory]
    [InlineData("Agronomy")]
    [InlineData("Dialog", "Agronomy")]
    [InlineData("Carriers", "Dialog")]
    [InlineData("Store", "Dialog")]
    [InlineData("Service", "Carriers", "Store")]
    public void Project_ItsReferences_AreThoseOfTheDesign(string project, params string[] expected)
    {
        var file = Path.Combine(RepositoryFolder.Find(), "src", $"HeapText.{project}", $"HeapText.{project}.csproj");

        var references = XDocument.Load(file).Descendants("ProjectReference")
            .Select(one => Path.GetFileNameWithoutExtension(one.Attribute("Include")!.Value)["HeapText.".Length..]);

        Assert.Equal(expected, references.Order());
    }
}
