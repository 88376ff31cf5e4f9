using System.Security.Cryptography;

namespace HeapText.Service.Turns;

/// <summary>Random ids that stand for farmers outside the store.</summary>
internal static class SubjectIds
{
    private const string Alphabet = "abcdefghijklmnopqrstuvwxyz234567"; // RFC 4648 base32, in lower case
    private const int Bits = 128;

    /// <summary>A new id: 16 random bytes in base32, 26 characters.</summary>
    public static string New()
    {
        var random = RandomNumberGenerator.GetBytes(Bits / 8);
        return string.Create((Bits + 4) / 5, random, static (id, bytes) =>
        {
            var (pending, held, next) = (0, 0, 0);
            for (var i = 0; i < id.Length; i++)
            {
                if (held < 5)
                {
                    pending = ((pending & 0x1F) << 8) | (next < bytes.Length ? bytes[next] : 0);
                    next++;
                    held += 8;
                }

                held -= 5;
                id[i] = Alphabet[(pending >> held) & 0x1F];
            }
        });
    }
}
