using System.Security.Cryptography;
using System.Text;
using HeapText.Dialog.Ports;

namespace HeapText.Store.Numbers;

/// <summary>Keeps telephone numbers out of sight: they are looked up by a keyed hash and written only
/// sealed.</summary>
/// <remarks>
/// Six keys are derived from one 32-byte secret (HKDF-SHA-256, RFC 5869). A sealed number is AES-256-GCM of the
/// number padded to 16 bytes. Its nonce is the first 96 bits of the look-up hash, a keyed function of the number
/// alone: a nonce never meets a second number, so any count of seals is safe, and a number sealed twice is the same
/// bytes, which tells no more than the look-up hash beside it. Losing the secret loses every number for good.
/// </remarks>
internal sealed class NumberVault
{
    /// <summary>Length of the secret. [bytes]</summary>
    public const int SecretLength = 32;

    /// <summary>Length of a sealed number: format 1, cipher text 16, tag 16. [bytes]</summary>
    public const int SealedLength = 1 + PaddedLength + TagLength;

    private const byte Format = 1;
    private const int HashLength = 16;
    private const int NonceLength = 12;
    private const int PaddedLength = 16;
    private const int TagLength = 16;

    private readonly byte[] _lookUp;
    private readonly byte[] _seal;
    private readonly byte[] _seen;
    private readonly byte[] _reference;
    private readonly byte[] _backup;

    /// <summary>Derives the keys.</summary>
    /// <exception cref="ArgumentException">The secret is not 32 bytes.</exception>
    public NumberVault(ReadOnlySpan<byte> secret)
    {
        if (secret.Length != SecretLength)
            throw new ArgumentException($"The secret must be {SecretLength} bytes.", nameof(secret));
        _lookUp = Derive(secret, "heaptext look-up");
        _seal = Derive(secret, "heaptext seal");
        _seen = Derive(secret, "heaptext seen");
        _reference = Derive(secret, "heaptext reference");
        _backup = Derive(secret, "heaptext backup");
        Fingerprint = Derive(secret, "heaptext fingerprint")[..HashLength];
    }

    /// <summary>Tells one secret from another without giving it away; written once into each store. [16
    /// bytes]</summary>
    public byte[] Fingerprint { get; }

    /// <summary>Where the record of this number lives.</summary>
    public FarmerKey KeyOf(Msisdn number) => new(Convert.ToHexStringLower(Hash(_lookUp, number.Value)));

    /// <summary>What stands for an inbound message's id; gateways have been seen to put numbers into ids. [16
    /// bytes]</summary>
    public byte[] MarkOf(SeenId seen) => Hash(_seen, seen.Line + "\n" + seen.Id);

    /// <summary>What stands for a gateway's reference to a message sent over a line. [16 bytes]</summary>
    public byte[] MarkOf(string line, string reference) => Hash(_reference, line + "\n" + reference);

    /// <summary>Shows that a backup with this digest was made under this secret. [32 bytes]</summary>
    public byte[] SignatureOf(ReadOnlySpan<byte> digest) => HMACSHA256.HashData(_backup, digest);

    /// <summary>The number as it may be written. [<see cref="SealedLength"/> bytes]</summary>
    /// <exception cref="ArgumentException">The key is not this number's.</exception>
    public byte[] Seal(FarmerKey key, Msisdn number)
    {
        if (KeyOf(number) != key) throw new ArgumentException("The key belongs to another number.", nameof(key));
        Span<byte> padded = stackalloc byte[PaddedLength];
        padded.Clear();
        Encoding.ASCII.GetBytes(number.Value, padded);
        var sealedNumber = new byte[SealedLength];
        sealedNumber[0] = Format;
        using var cipher = new AesGcm(_seal, TagLength);
        cipher.Encrypt(
            Nonce(key), padded, sealedNumber.AsSpan(1, PaddedLength), sealedNumber.AsSpan(1 + PaddedLength, TagLength));
        return sealedNumber;
    }

    /// <summary>The number back.</summary>
    /// <exception cref="CryptographicException">The bytes were altered, or sealed under another key or
    /// secret.</exception>
    public Msisdn Unseal(FarmerKey key, ReadOnlySpan<byte> sealedNumber)
    {
        if (sealedNumber.Length != SealedLength || sealedNumber[0] != Format)
            throw new CryptographicException("A sealed number has an unknown form.");
        Span<byte> padded = stackalloc byte[PaddedLength];
        using var cipher = new AesGcm(_seal, TagLength);
        cipher.Decrypt(
            Nonce(key), sealedNumber.Slice(1, PaddedLength), sealedNumber.Slice(1 + PaddedLength, TagLength), padded);
        return Msisdn.TryParse(Encoding.ASCII.GetString(padded.TrimEnd((byte)0)), out var number)
            ? number
            : throw new CryptographicException("A sealed number holds no number.");
    }

    private static ReadOnlySpan<byte> Nonce(FarmerKey key) => Convert.FromHexString(key.Hash).AsSpan(0, NonceLength);

    private static byte[] Derive(ReadOnlySpan<byte> secret, string purpose)
    {
        var key = new byte[SecretLength];
        HKDF.DeriveKey(HashAlgorithmName.SHA256, secret, key, [], Encoding.ASCII.GetBytes(purpose));
        return key;
    }

    private static byte[] Hash(byte[] key, string text) =>
        HMACSHA256.HashData(key, Encoding.UTF8.GetBytes(text))[..HashLength];
}
