namespace HeapText.Carriers.Mapped;

/// <summary>How a message is handed to the gateway.</summary>
public sealed record SendMapping
{
    /// <summary>GET, POST or PUT.</summary>
    public required HttpMethod Method { get; init; }

    /// <summary>The address; its scheme and host hold no names to fill in.</summary>
    public required Template Url { get; init; }

    /// <summary>Headers beside those of the content and the proof.</summary>
    public IReadOnlyList<KeyValuePair<string, Template>> Headers { get; init; } = [];

    /// <summary>The content type; null for a request without a body.</summary>
    public string? ContentType { get; init; }

    /// <summary>What the body is a document of, by its content type.</summary>
    public TextFormat Format { get; init; }

    /// <summary>The body; null for a request without one.</summary>
    public Template? Body { get; init; }

    /// <summary>What the gateway calls the encodings, by our names of them; empty for our names.</summary>
    public IReadOnlyDictionary<string, string> Encodings { get; init; } = new Dictionary<string, string>();

    /// <summary>How we show who we are.</summary>
    public required LineAuth Auth { get; init; }

    /// <summary>What the answers mean.</summary>
    public required AnswerRules Answers { get; init; }

    /// <summary>How long one request may take before its outcome counts as unknown. 1 s to 25 s; default
    /// 10 s.</summary>
    public TimeSpan Timeout { get; init; } = TimeSpan.FromSeconds(10);
}
