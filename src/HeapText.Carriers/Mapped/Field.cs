namespace HeapText.Carriers.Mapped;

/// <summary>Where a field stands: the first of these places that holds something.</summary>
/// <param name="Setting">Name of the setting that says so, for telling faults.</param>
/// <param name="Places">The places, in order; a constant comes last and is the default.</param>
public sealed record Field(string Setting, IReadOnlyList<Place> Places)
{
    /// <summary>Reads the places, parted by " | "; null when one of them is none, with what is wrong.</summary>
    public static Field? Parse(string setting, string text, out string fault)
    {
        ArgumentNullException.ThrowIfNull(text);
        List<Place> places = [];
        fault = "";
        foreach (var written in Place.Or().Split(text))
        {
            if (places is [.., Place.Constant or Place.Hash])
            {
                fault = "has a place after one that always holds something; put that one last";
                return null;
            }

            if (Place.Parse(written, out fault) is not { } place) return null;
            places.Add(place);
        }

        return new Field(setting, places);
    }
}

/// <summary>What stands in a field.</summary>
public abstract record FieldValue
{
    private FieldValue() { }

    /// <summary>It holds this, several times where a list stands there.</summary>
    public sealed record Found(IReadOnlyList<string> Values) : FieldValue;

    /// <summary>Nothing stands there.</summary>
    public sealed record Missing : FieldValue;

    /// <summary>It cannot be read.</summary>
    /// <param name="Why">Fault and fix; holds nothing of what stands there.</param>
    public sealed record Broken(string Why) : FieldValue;
}
