using System.Security.Cryptography;
using HeapText.Dialog.Ports;
using HeapText.Store.Numbers;
using HeapText.Store.Redis;
using HeapText.Store.Sqlite;
using Microsoft.Extensions.Logging;
using Microsoft.Extensions.Logging.Abstractions;

namespace HeapText.Store;

/// <summary>Opens the store that the settings name.</summary>
public static class StoreFactory
{
    private const string SecretFile = "store.key";

    /// <summary>Opens the store, making or migrating it where needed.</summary>
    /// <param name="options">Where it is.</param>
    /// <param name="logger">Told of faults; never of numbers or texts.</param>
    /// <param name="time">The clock for what the store dates itself; the system's when null. Time limits always run
    /// on the system's clock.</param>
    /// <exception cref="ArgumentException">The settings are wrong; the message names the setting and the
    /// fix.</exception>
    /// <exception cref="InvalidDataException">A newer version, or another secret, made what is there.</exception>
    /// <exception cref="InvalidOperationException">The server could lose what it acknowledges.</exception>
    /// <exception cref="StoreUnavailableException">The file or server cannot be reached.</exception>
    public static async ValueTask<IStore> Open(StoreOptions options, ILogger? logger = null, TimeProvider? time = null)
    {
        ArgumentNullException.ThrowIfNull(options);
        logger ??= NullLogger.Instance;
        time ??= TimeProvider.System;
        if (options.Connection.Length > 0)
            return await RedisStore.Open(options, new NumberVault(Decode(options.Secret)), logger, time);
        MakePrivate(options.DataDirectory);
        var vault = new NumberVault(await EmbeddedSecret(options));
        return SqliteStore.Open(options.DataDirectory, vault, logger, time);
    }

    /// <summary>Opens a store that a service may be using: makes and migrates nothing, and leaves alone what the
    /// service has claimed.</summary>
    /// <param name="options">Where it is.</param>
    /// <param name="logger">Told of faults; never of numbers or texts.</param>
    /// <exception cref="ArgumentException">The settings are wrong, or no store is there.</exception>
    /// <exception cref="InvalidDataException">Another version, or another secret, made what is there.</exception>
    /// <exception cref="InvalidOperationException">The server could lose what it acknowledges.</exception>
    /// <exception cref="StoreUnavailableException">The file or server cannot be reached.</exception>
    public static async ValueTask<IStore> OpenBeside(StoreOptions options, ILogger? logger = null)
    {
        ArgumentNullException.ThrowIfNull(options);
        if (options.Connection.Length > 0) return await Open(options, logger);
        var vault = await VaultBeside(options);
        return SqliteStore.OpenBeside(options.DataDirectory, vault, logger ?? NullLogger.Instance);
    }

    /// <summary>The keys of the embedded store that is there.</summary>
    /// <exception cref="ArgumentException">There is none, or the settings are wrong.</exception>
    internal static async ValueTask<NumberVault> VaultBeside(StoreOptions options)
    {
        if (!File.Exists(Path.Combine(options.DataDirectory, SqliteStore.FileName)))
            throw new ArgumentException(
                $"Store:DataDirectory: there is no store in '{options.DataDirectory}'. Name the folder of the service.",
                nameof(options));
        return new NumberVault(await EmbeddedSecret(options));
    }

    /// <summary>The keys that the settings name; none is made.</summary>
    /// <exception cref="ArgumentException">There is none, or the settings are wrong.</exception>
    internal static async ValueTask<NumberVault> VaultGiven(StoreOptions options)
    {
        if (options.Connection.Length > 0) return new NumberVault(Decode(options.Secret));
        var file = Path.Combine(options.DataDirectory, SecretFile);
        if (options.Secret.Length == 0 && !File.Exists(file))
            throw new ArgumentException(
                $"Store:Secret is empty and there is no '{file}'. Set the secret that the backup was made under, or "
                + $"put that store's {SecretFile} there.", nameof(options));
        return new NumberVault(Decode(options.Secret.Length > 0 ? options.Secret : await File.ReadAllTextAsync(file)));
    }

    /// <summary>Makes the folder, for this user alone.</summary>
    internal static void MakePrivate(string folder)
    {
        if (OperatingSystem.IsWindows()) Directory.CreateDirectory(folder);
        else Directory.CreateDirectory(
            folder, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute);
    }

    private static async ValueTask<byte[]> EmbeddedSecret(StoreOptions options)
    {
        if (options.Secret.Length > 0) return Decode(options.Secret);
        var file = Path.Combine(options.DataDirectory, SecretFile);
        if (!File.Exists(file))
        {
            if (File.Exists(Path.Combine(options.DataDirectory, SqliteStore.FileName)))
                throw new ArgumentException(
                    $"Store:Secret is empty and '{file}' is gone, but a store is there. Put it back or set the secret.",
                    nameof(options));
            await WriteSecret(file);
        }
        return Decode(await File.ReadAllTextAsync(file));
    }

    private static async ValueTask WriteSecret(string file)
    {
        // Written beside and moved, so that a process killed here leaves no half of it.
        var beside = file + ".new";
        var settings = new FileStreamOptions { Mode = FileMode.Create, Access = FileAccess.Write };
        if (!OperatingSystem.IsWindows()) settings.UnixCreateMode = UnixFileMode.UserRead | UnixFileMode.UserWrite;
        var secret = Convert.ToBase64String(RandomNumberGenerator.GetBytes(NumberVault.SecretLength));
        await using (var stream = new FileStream(beside, settings))
        {
            await stream.WriteAsync(System.Text.Encoding.ASCII.GetBytes(secret));
            stream.Flush(flushToDisk: true);
        }
        File.Move(beside, file);
    }

    private static byte[] Decode(string secret)
    {
        var bytes = new byte[NumberVault.SecretLength];
        return Convert.TryFromBase64String(secret.Trim(), bytes, out var length) && length == bytes.Length
            ? bytes
            : throw new ArgumentException(
                "Store:Secret must be 32 bytes in base 64, as 'openssl rand -base64 32' makes them.", nameof(secret));
    }
}
