using System.Net;
using HeapText.Agronomy.Heap;
using HeapText.Agronomy.Materials;
using HeapText.Agronomy.Use;
using HeapText.Carriers;
using HeapText.Dialog.Engine;
using HeapText.Dialog.Ports;
using HeapText.Store;

namespace HeapText.Service.Startup;

/// <summary>What the service runs with, already checked.</summary>
internal sealed record Settings
{
    /// <summary>Addresses to listen on.</summary>
    public required IReadOnlyList<string> Urls { get; init; }

    /// <summary>Reverse proxies whose word on the caller's address is believed.</summary>
    public IReadOnlyList<IPNetwork> Proxies { get; init; } = [];

    /// <summary>Where the records are kept.</summary>
    public required StoreOptions Store { get; init; }

    /// <summary>Lines to gateways; none means practice mode.</summary>
    public IReadOnlyList<LineOptions> Lines { get; init; } = [];

    /// <summary>What may be sent in a day, over all lines.</summary>
    public SpendOptions Spend { get; init; } = SpendOptions.None;

    /// <summary>Groups to add or replace at the start.</summary>
    public IReadOnlyList<Group> Groups { get; init; } = [];

    /// <summary>How heaps are turned, by the key of the method.</summary>
    public required IReadOnlyDictionary<string, HeapMethod> Methods { get; init; }

    /// <summary>Key of the method of each group that has one of its own, by code.</summary>
    public IReadOnlyDictionary<int, string> GroupMethods { get; init; } = new Dictionary<int, string>();

    /// <summary>District of each group that shares one with others, by code.</summary>
    public IReadOnlyDictionary<int, string> GroupDistricts { get; init; } = new Dictionary<int, string>();

    /// <summary>Air temperature of the season. [degrees C]</summary>
    public double AmbientC { get; init; } = Dialog.Engine.Office.UsualAmbientC;

    /// <summary>What fertiliser costs here.</summary>
    public required LocalPrices Prices { get; init; }

    /// <summary>What the office weighed and measured itself, in place of the tables.</summary>
    public DistrictFigures District { get; init; } = DistrictFigures.None;

    /// <summary>Languages that may be spoken on real lines although no native-speaking agronomist has read
    /// them.</summary>
    public IReadOnlySet<string> Languages { get; init; } = new HashSet<string>();

    /// <summary>What the conversation needs of these settings.</summary>
    public Office Office() => new()
    {
        Methods = Methods,
        GroupMethods = GroupMethods,
        GroupDistricts = GroupDistricts,
        District = District,
        AmbientC = AmbientC,
        Prices = Prices,
        Languages = IsPractice ? null : Languages,
    };

    /// <summary>The dialogs folder; null for the one that comes with the program.</summary>
    public string? Dialogs { get; init; }

    /// <summary>Start practice mode with an empty store and no demo village.</summary>
    public bool Fresh { get; init; }

    /// <summary>True when no line to a gateway is configured: phones are simulated, and reachable from here
    /// only.</summary>
    public bool IsPractice => Lines.Count == 0;

    /// <summary>True when the data folder is used: for the embedded store, and for what practice phones
    /// got.</summary>
    public bool KeepsFiles => IsPractice || Store.Connection.Length == 0;
}
