namespace HeapText.Carriers.Mapped;

/// <summary>How one side shows the other who it is.</summary>
public abstract record LineAuth
{
    private LineAuth() { }

    /// <summary>Not at all: by its address alone.</summary>
    public sealed record None : LineAuth;

    /// <summary>By name and password.</summary>
    /// <remarks>Source: RFC 7617.</remarks>
    public sealed record Basic(string User, IReadOnlyList<LineSecret> Passwords) : LineAuth;

    /// <summary>By a token.</summary>
    /// <remarks>Source: RFC 6750, section 2.1.</remarks>
    public sealed record Bearer(IReadOnlyList<LineSecret> Tokens) : LineAuth;

    /// <summary>By a key in a header.</summary>
    public sealed record HeaderKey(string Header, IReadOnlyList<LineSecret> Keys) : LineAuth;

    /// <summary>By a key in the query of the address.</summary>
    public sealed record QueryKey(string Parameter, IReadOnlyList<LineSecret> Keys) : LineAuth;

    /// <summary>By a keyed hash over parts of the request.</summary>
    public sealed record Hmac(HmacScheme Scheme) : LineAuth;

    /// <summary>The same with every secret replaced by <see cref="LineSecret.Mask"/>, fit to be shown.</summary>
    public LineAuth Hidden()
    {
        LineSecret[] hidden = [new(LineSecret.Mask)];
        return this switch
        {
            Basic basic => basic with { Passwords = hidden },
            Bearer => new Bearer(hidden),
            HeaderKey key => key with { Keys = hidden },
            QueryKey key => key with { Keys = hidden },
            Hmac(var scheme) => new Hmac(scheme with { Keys = [[0]] }),
            _ => this,
        };
    }
}
