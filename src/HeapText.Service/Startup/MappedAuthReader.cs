using System.Text;
using HeapText.Carriers.Mapped;

namespace HeapText.Service.Startup;

/// <summary>Reads how one side shows the other who it is.</summary>
internal static class MappedAuthReader
{
    private const int ShortestHmacKey = 16;

    /// <summary>The proof; none when it cannot be read, which is then a fault.</summary>
    /// <param name="auth">Its section.</param>
    /// <param name="inbound">True for what the gateway shows us, where an old secret may still be taken.</param>
    public static LineAuth Read(MappedSection auth, bool inbound)
    {
        var kind = auth.OneOf("Kind", "none", "basic", "bearer", "header-key", "query-key", "hmac");
        string[] old = inbound ? ["OldSecret"] : [];
        switch (kind)
        {
            case "basic":
                auth.Know(["Kind", "User", "Secret", .. old]);
                return new LineAuth.Basic(ReadUser(auth), ReadSecrets(auth));
            case "bearer":
                auth.Know(["Kind", "Secret", .. old]);
                return new LineAuth.Bearer(ReadSecrets(auth));
            case "header-key":
                auth.Know(["Kind", "Header", "Secret", .. old]);
                return new LineAuth.HeaderKey(ReadHeader(auth, "Header"), ReadSecrets(auth));
            case "query-key":
                auth.Know(["Kind", "Parameter", "Secret", .. old]);
                return new LineAuth.QueryKey(
                    auth.Wanted("Parameter", "write the name of the parameter that holds the key"), ReadSecrets(auth));
            case "hmac":
                auth.Know(["Kind", "Secret", .. old, "SecretForm", "Hash", "Over", "Header", "Prefix", "Encoding",
                    "TimestampHeader", "TimestampForm"]);
                return new LineAuth.Hmac(ReadHmac(auth));
            default:
                auth.Know("Kind");
                return new LineAuth.None();
        }
    }

    private static HmacScheme ReadHmac(MappedSection auth)
    {
        var over = Template.Parse(auth.Wanted("Over", "write what is hashed, like {timestamp}.{body}"));
        var headers = over.Names.Where(name => name.StartsWith("header:", StringComparison.Ordinal));
        if (TemplateCheck.Unknown(over, [.. HmacScheme.Parts, .. headers]) is { } unknown) auth.Fault("Over", unknown);
        var stamp = auth.Text("TimestampHeader") is null ? null : ReadHeader(auth, "TimestampHeader");
        var coversTime = over.Names.Contains("timestamp");
        if (stamp is null && coversTime)
            auth.Fault("TimestampHeader", "is missing; write the header that holds the {timestamp} of Over");
        if (stamp is not null && !coversTime)
            auth.Fault("Over", "leaves out {timestamp}, so anyone could change the time; put it in");
        var prefix = auth.Raw("Prefix") ?? "";
        if (!HeaderText.IsValue(prefix)) auth.Fault("Prefix", "holds more than printable ASCII; write only that");
        return new HmacScheme
        {
            Keys = ReadKeys(auth),
            IsLong = auth.OneOf("Hash", "sha256", "sha512") == "sha512",
            Over = over,
            Header = ReadHeader(auth, "Header"),
            Prefix = prefix,
            IsBase64 = auth.OneOf("Encoding", "hex", "base64") == "base64",
            TimestampHeader = stamp,
            IsInMilliseconds = auth.OneOf("TimestampForm", "unix-seconds", "unix-milliseconds") == "unix-milliseconds",
        };
    }

    private static string ReadUser(MappedSection auth)
    {
        var user = auth.Wanted("User", "write the name that goes with the password");
        if (user.Contains(':', StringComparison.Ordinal)) auth.Fault("User", "holds a colon, which no name may");
        return user;
    }

    private static string ReadHeader(MappedSection auth, string key)
    {
        var header = auth.Wanted(key, "write the name of the header");
        if (header.Length > 0 && !HeaderText.IsName(header)) auth.Fault(key, "is no name of a header; write one");
        return header;
    }

    private static List<LineSecret> ReadSecrets(MappedSection auth)
    {
        foreach (var key in new[] { "Secret", "OldSecret" })
            if (auth.Text(key) is { } secret && !HeaderText.IsValue(secret))
                auth.Fault(key, "holds more than printable ASCII, which no header carries; choose another secret");
        var wanted = auth.Wanted("Secret", "write the password, token or key");
        return [new LineSecret(wanted), .. auth.Text("OldSecret") is { } old ? new[] { new LineSecret(old) } : []];
    }

    private static List<byte[]> ReadKeys(MappedSection auth)
    {
        List<byte[]> keys = [];
        var form = auth.OneOf("SecretForm", "text", "hex", "base64");
        auth.Wanted("Secret", "write the key shared with the gateway");
        foreach (var name in new[] { "Secret", "OldSecret" })
        {
            if (auth.Text(name) is not { } text) continue;
            var key = Decode(text, form);
            if (key is null || key.Length < ShortestHmacKey)
                auth.Fault(name, $"is no key of {ShortestHmacKey} bytes or more in the form {form}; write a longer "
                    + "one, or another SecretForm");
            else
                keys.Add(key);
        }

        return keys;
    }

    private static byte[]? Decode(string text, string form)
    {
        try
        {
            return form switch
            {
                "hex" => Convert.FromHexString(text),
                "base64" => Convert.FromBase64String(text),
                _ => Encoding.UTF8.GetBytes(text),
            };
        }
        catch (FormatException)
        {
            return null;
        }
    }
}
