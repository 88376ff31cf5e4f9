using HeapText.Agronomy.Heap;

namespace HeapText.Service.Startup;

/// <summary>Reads the Methods section: how heaps are turned, where an office does it otherwise than the
/// default.</summary>
internal static class MethodSettingsReader
{
    /// <summary>Every method by its key; every fault is added to <paramref name="faults"/>.</summary>
    public static IReadOnlyDictionary<string, HeapMethod> Read(IConfigurationSection methods, List<string> faults)
    {
        var usual = new HeapMethod();
        var read = new Dictionary<string, HeapMethod>(StringComparer.Ordinal) { [usual.Key] = usual };
        foreach (var section in methods.GetChildren())
        {
            if (!read.TryGetValue(section.Key, out var method))
            {
                faults.Add($"{section.Path} is no method: use {string.Join(", ", read.Keys)}, or take it out.");
                continue;
            }
            string[] known = [.. typeof(HeapMethod).GetProperties().Select(p => p.Name).Except([nameof(method.Key)])];
            SettingsReader.RefuseOthers(section, known, faults);
            try
            {
                section.Bind(method);
            }
            catch (InvalidOperationException fault)
            {
                faults.Add($"{section.Path}: {fault.InnerException?.Message ?? fault.Message} Write whole numbers.");
            }
            faults.AddRange(method.Faults().Select(fault => $"{section.Path}:{fault}."));
        }
        return read;
    }
}
