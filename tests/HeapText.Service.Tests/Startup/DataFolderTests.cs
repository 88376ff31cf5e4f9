using HeapText.Service.Startup;
using HeapText.Service.Tests.Fakes;

namespace HeapText.Service.Tests.Startup;

public sealed class DataFolderTests
{
    [Fact]
    public void Take_NoSuchFolder_MakesItForThisUserAlone()
    {
        using var parent = new TempFolder();
        var path = Path.Combine(parent.Path, "data");

        using var folder = DataFolder.Take(path);

        Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute,
            new DirectoryInfo(path).UnixFileMode);
    }

    [Fact]
    public void WipeAll_FilesOfOthers_AreLeft()
    {
        using var parent = new TempFolder();
        var (own, other) = (Path.Combine(parent.Path, "heaptext.db"), Path.Combine(parent.Path, "notes.txt"));
        File.WriteAllText(own, "");
        File.WriteAllText(other, "");

        using var folder = DataFolder.Take(parent.Path);
        folder.WipeAll();

        Assert.False(File.Exists(own));
        Assert.True(File.Exists(other));
    }
}
