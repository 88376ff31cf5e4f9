namespace HeapText.Service.Practice;

/// <summary>A village of the demo as written in demo-village-CODE.yml: a group and its farmers' texts.</summary>
internal sealed class DemoScript
{
    /// <summary>The code farmers text to join.</summary>
    public int Code { get; set; }

    /// <summary>The village.</summary>
    public string Name { get; set; } = "";

    /// <summary>Its language.</summary>
    public string Language { get; set; } = "";

    /// <summary>Time zone, by its tz database name.</summary>
    public string Zone { get; set; } = "";

    /// <summary>Name of the trainer.</summary>
    public string Officer { get; set; } = "";

    /// <summary>What its farmers wrote, in any order.</summary>
    public List<DemoText> Texts { get; set; } = [];
}

/// <summary>A text of a demo farmer.</summary>
internal sealed class DemoText
{
    /// <summary>The phone, +999….</summary>
    public string Phone { get; set; } = "";

    /// <summary>How many days ago; 0 is today, and is left out if its hour has not come.</summary>
    public int Day { get; set; }

    /// <summary>Local time, HH:mm.</summary>
    public string At { get; set; } = "";

    /// <summary>What was written.</summary>
    public string Text { get; set; } = "";
}
