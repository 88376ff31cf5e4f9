using System.Security.Cryptography;
using System.Text;
using HeapText.Dialog.Ports;
using HeapText.Store.Numbers;

namespace HeapText.Store.Tests.Numbers;

public sealed class NumberVaultTests
{
    private readonly NumberVault _vault = new(new byte[32]);

    [Fact]
    public void KeyOf_ZeroSecret_MatchesTheStandards()
    {
        // RFC 5869 and RFC 2104 done by hand: extract with a zero salt, expand once, then the keyed hash.
        var extracted = HMACSHA256.HashData(new byte[32], new byte[32]);
        var lookUp = HMACSHA256.HashData(extracted, "heaptext look-up\u0001"u8);
        var expected = Convert.ToHexStringLower(HMACSHA256.HashData(lookUp, "+999100000001"u8)[..16]);

        Assert.Equal(new FarmerKey(expected), _vault.KeyOf(Number("+999100000001")));
    }

    [Theory]
    [InlineData("+9991234")]
    [InlineData("+999100000001")]
    [InlineData("+999123456789012")]
    public void Unseal_Sealed_IsTheNumberInOneLength(string text)
    {
        var number = Number(text);
        var key = _vault.KeyOf(number);

        var sealedNumber = _vault.Seal(key, number);

        Assert.Equal(NumberVault.SealedLength, sealedNumber.Length);
        Assert.Equal(-1, sealedNumber.AsSpan().IndexOf(Encoding.ASCII.GetBytes(text[1..])));
        Assert.Equal(number, _vault.Unseal(key, sealedNumber));
    }

    [Fact]
    public void Unseal_AnyByteAltered_IsRefused()
    {
        var number = Number("+999100000001");
        var key = _vault.KeyOf(number);
        var sealedNumber = _vault.Seal(key, number);

        for (var i = 0; i < sealedNumber.Length; i++)
        {
            var altered = sealedNumber.ToArray();
            altered[i] ^= 1;
            Assert.ThrowsAny<CryptographicException>(() => _vault.Unseal(key, altered));
        }
    }

    [Fact]
    public void Unseal_UnderAnotherKeyOrSecret_IsRefused()
    {
        var number = Number("+999100000001");
        var key = _vault.KeyOf(number);
        var sealedNumber = _vault.Seal(key, number);
        var other = new NumberVault([.. Enumerable.Repeat((byte)1, 32)]);

        var otherKey = _vault.KeyOf(Number("+999100000002"));
        Assert.ThrowsAny<CryptographicException>(() => _vault.Unseal(otherKey, sealedNumber));
        Assert.ThrowsAny<CryptographicException>(() => other.Unseal(key, sealedNumber));
        Assert.NotEqual(key, other.KeyOf(number));
    }

    [Fact]
    public void Seal_KeyOfAnotherNumber_IsRefused() =>
        Assert.Throws<ArgumentException>(
            () => _vault.Seal(_vault.KeyOf(Number("+999100000002")), Number("+999100000001")));

    [Fact]
    public void MarkOf_LineAndId_BothCount()
    {
        Assert.NotEqual(_vault.MarkOf(new SeenId("a", "1")), _vault.MarkOf(new SeenId("b", "1")));
        Assert.NotEqual(_vault.MarkOf(new SeenId("a", "1")), _vault.MarkOf(new SeenId("a", "2")));
        Assert.Equal(_vault.MarkOf(new SeenId("a", "1")), new NumberVault(new byte[32]).MarkOf(new SeenId("a", "1")));
    }

    [Fact]
    public void NumberVault_SecretOfAnotherLength_IsRefused() =>
        Assert.Throws<ArgumentException>(() => new NumberVault(new byte[31]));

    private static Msisdn Number(string text) =>
        Msisdn.TryParse(text, out var number) ? number : throw new ArgumentException("Not a number.", nameof(text));
}
