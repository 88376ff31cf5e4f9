using HeapText.Dialog.Ports;
using HeapText.Store.Redis;
using StackExchange.Redis;

namespace HeapText.Store.Tests.Redis;

public sealed class GuardTests
{
    [Theory]
    [InlineData("OOM command not allowed when used memory > 'maxmemory'.")]
    [InlineData("ERR Error running script (call to f_1): @user_script:30: @user_script: 30: -OOM command not allowed")]
    [InlineData("ERR Error running script (call to f_1): @user_script:30: -READONLY You can't write")]
    [InlineData("ERR Error running script (call to f_1): @user_script: 30: -MISCONF Redis is configured to save")]
    public async Task Do_ServerCannotTakeIt_IsUnavailable(string answer) =>
        await Assert.ThrowsAsync<StoreUnavailableException>(() => Meet(answer));

    [Theory]
    [InlineData("ERR unknown command 'NONSENSE'")]
    [InlineData("ERR Error running script (call to f_1): @user_script:3: attempt to index a nil value")]
    [InlineData("WRONGTYPE Operation against a key holding the wrong kind of value")]
    public async Task Do_WeAskedForNonsense_IsNoExcuse(string answer) =>
        await Assert.ThrowsAsync<RedisServerException>(() => Meet(answer));

    private static Task<int> Meet(string answer) => Guard.Do(
        () => Task.FromException<int>(
            new RedisServerException(RedisErrorKind.UnknownError, CommandFlags.None, answer)),
        CancellationToken.None).AsTask();
}
