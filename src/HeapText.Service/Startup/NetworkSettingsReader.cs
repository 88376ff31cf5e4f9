using System.Net;

namespace HeapText.Service.Startup;

/// <summary>Reads lists of addresses and networks.</summary>
internal static class NetworkSettingsReader
{
    /// <summary>The networks a setting lists; every fault is added to <paramref name="faults"/>.</summary>
    public static IReadOnlyList<IPNetwork> Read(IConfiguration section, string path, string key, List<string> faults)
    {
        List<IPNetwork> networks = [];
        foreach (var word in SettingsReader.Words(section[key]))
        {
            if (IPNetwork.TryParse(word, out var network)) networks.Add(network);
            else if (IPAddress.TryParse(word, out var one))
                networks.Add(new IPNetwork(one, one.GetAddressBytes().Length * 8));
            else
                faults.Add($"{path} names {word}, which is no network. "
                    + "Write addresses or networks, like 192.0.2.7 or 192.0.2.0/24.");
        }

        return networks;
    }
}
