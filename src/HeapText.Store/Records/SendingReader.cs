using System.Security.Cryptography;
using HeapText.Dialog.Ports;
using HeapText.Store.Numbers;
using Microsoft.Extensions.Logging;

namespace HeapText.Store.Records;

/// <summary>Reads taken messages. One that cannot be read is logged and left out, so that it holds back nobody but its
/// own farmer; it stays where it is and is tried again whenever its lease ends.</summary>
internal sealed partial class SendingReader(NumberVault vault, ILogger logger)
{
    /// <summary>The message to send; null when it or its number cannot be read.</summary>
    public Sending? Read(FarmerKey key, ReadOnlySpan<byte> sealedNumber, Func<Outbound> message, int attempt)
    {
        try
        {
            return new Sending(key, vault.Unseal(key, sealedNumber), message(), attempt);
        }
        catch (Exception e) when (e is InvalidDataException or CryptographicException)
        {
            LogUnreadable(logger, e, key.Hash, attempt);
            return null;
        }
    }

    [LoggerMessage(4003, LogLevel.Error, "A message of farmer {Key} cannot be read, at attempt {Attempt}")]
    private static partial void LogUnreadable(ILogger logger, Exception fault, string key, int attempt);
}
