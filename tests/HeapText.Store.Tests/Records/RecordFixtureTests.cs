using System.Reflection;
using HeapText.Dialog.Ports;
using HeapText.Store.Numbers;
using HeapText.Store.Records;
using HeapText.Store.Redis;

namespace HeapText.Store.Tests.Records;

/// <summary>Every type that is stored has a file of each form it was released in.</summary>
public sealed class RecordFixtureTests
{
    private const string Folder = "records";
    private static readonly Type[] Anything = [.. Enumerable.Repeat(typeof(object), 4)];
    private static readonly FarmerKey Key = new("00112233445566778899aabbccddeeff");

    public static TheoryData<string> StoredTypes => [.. Stored().Select(type => type.Name).Order()];

    [Theory]
    [MemberData(nameof(StoredTypes))]
    public void Fixture_OfEachStoredType_IsWhatIsWrittenNowAndReadsBack(string name)
    {
        var type = Stored().Single(one => one.Name == name);
        Assert.True(Samples.All.TryGetValue(type, out var sample), $"Samples holds no {name}: add one.");
        var file = $"format-{RecordFormat.Version}-{Kebab(name)}";
        var packed = Pack(type, sample);
        var files = FixtureFiles.Of(Folder, file, ".bin");
        if (FixtureFiles.Accepts && (files.Count == 0 || !File.ReadAllBytes(files[^1]).SequenceEqual(packed)))
            FixtureFiles.Add(Folder, file, ".bin", packed);
        files = FixtureFiles.Of(Folder, file, ".bin");

        Assert.True(
            files.Count > 0 && File.ReadAllBytes(files[^1]).SequenceEqual(packed), FixtureFiles.Missing(name));
        Assert.All(files, one => Assert.NotNull(Unpack(type, File.ReadAllBytes(one))));
        Assert.Equivalent(sample, Unpack(type, File.ReadAllBytes(files[^1])), strict: true);
    }

    [Fact]
    public void StoredTypes_FoundInTheProgram_AreThoseWithASample() =>
        Assert.Equal(Samples.All.Keys.Select(type => type.Name).Order(), Stored().Select(type => type.Name).Order());

    /// <summary>What the server keeps in a form of its own, around a packed record or without one.</summary>
    [Theory]
    [InlineData("stored-farmer")]
    [InlineData("outbox-entry")]
    [InlineData("reference-entry")]
    public void Fixture_OfEachFormOfTheServer_IsWhatIsWrittenNowAndReadsBack(string name)
    {
        var file = $"layout-{StoreStartCheck.Current}-{name}";
        var written = OfTheServer()[name];
        if (FixtureFiles.Accepts && FixtureFiles.Of(Folder, file, ".bin") is [])
            FixtureFiles.Add(Folder, file, ".bin", written);
        var files = FixtureFiles.Of(Folder, file, ".bin");

        Assert.True(files.Count > 0, FixtureFiles.Missing(name));
        Assert.Equal(written, File.ReadAllBytes(files[^1]));
        Assert.All(files, one => AssertReads(name, File.ReadAllBytes(one)));
    }

    private static Dictionary<string, byte[]> OfTheServer()
    {
        var sealedNumber = Enumerable.Range(0, NumberVault.SealedLength).Select(n => (byte)n).ToArray();
        return new Dictionary<string, byte[]>
        {
            ["stored-farmer"] = StoredFarmer.Join(258, sealedNumber, [1, 0x90]),
            ["outbox-entry"] = OutboxEntry.Of(Samples.Message, version: 12, place: 3),
            ["reference-entry"] = new ReferenceEntry(Key, 2, "-17").Bytes(),
        };
    }

    private static void AssertReads(string name, byte[] stored)
    {
        switch (name)
        {
            case "stored-farmer":
                Assert.Equal(258, StoredFarmer.Version(stored));
                Assert.Equal(NumberVault.SealedLength, StoredFarmer.SealedNumber(stored).Length);
                Assert.Equal(new byte[] { 1, 0x90 }, StoredFarmer.Record(stored).ToArray());
                break;
            case "outbox-entry":
                Assert.Equal(Samples.Message, OutboxEntry.Message(stored));
                break;
            default:
                Assert.Equal(new ReferenceEntry(Key, 2, "-17"), ReferenceEntry.From(stored));
                break;
        }
    }

    /// <summary>The types that the program packs or unpacks by name anywhere, and those it has a formatter
    /// for.</summary>
    private static HashSet<Type> Stored()
    {
        var module = typeof(RecordFormat).Module;
        var found = module.GetTypes().Select(type => type.BaseType)
            .Where(parent => parent is { IsGenericType: true, ContainsGenericParameters: false }
                && parent.GetGenericTypeDefinition() == typeof(PortFormatter<>))
            .Select(parent => parent!.GetGenericArguments()[0])
            .ToHashSet();
        foreach (var method in GenericCalls(module))
            if (method.DeclaringType == typeof(RecordFormat)) found.UnionWith(method.GetGenericArguments());
        found.Remove(typeof(object));
        return found;
    }

    // Every generic method that is called with types stands in a table of the assembly; its tokens begin so.
    private static IEnumerable<MethodBase> GenericCalls(Module module)
    {
        const int table = 0x2B000000;
        for (var row = 1; ; row++)
        {
            MethodBase? method = null;
            try
            {
                method = module.ResolveMethod(table + row, Anything, Anything);
            }
            catch (ArgumentOutOfRangeException)
            {
                yield break;
            }
            catch (ArgumentException)
            {
                // of types that "object" cannot stand for; none of ours
            }
            if (method is not null) yield return method;
        }
    }

    private static byte[] Pack(Type type, object sample) => (byte[])typeof(RecordFormat)
        .GetMethod(nameof(RecordFormat.Pack))!.MakeGenericMethod(type).Invoke(null, [sample])!;

    private static object Unpack(Type type, byte[] packed) => typeof(RecordFormat)
        .GetMethod(nameof(RecordFormat.Unpack))!.MakeGenericMethod(type)
        .Invoke(null, [new ReadOnlyMemory<byte>(packed)])!;

    private static string Kebab(string name) => string.Concat(
        name.Select((c, i) => char.IsUpper(c) ? (i == 0 ? "" : "-") + char.ToLowerInvariant(c) : c.ToString()));
}
