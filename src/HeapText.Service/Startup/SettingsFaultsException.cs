namespace HeapText.Service.Startup;

/// <summary>The settings cannot be used; holds every fault, each with its fix.</summary>
internal sealed class SettingsFaultsException(IReadOnlyList<string> faults, Exception? inner = null)
    : Exception(string.Join(Environment.NewLine, faults), inner)
{
    /// <summary>One sentence or two a fault: the key, what is wrong, what to write.</summary>
    public IReadOnlyList<string> Faults { get; } = faults;
}
