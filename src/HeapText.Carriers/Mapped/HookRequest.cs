using Microsoft.AspNetCore.Http;

namespace HeapText.Carriers.Mapped;

/// <summary>A request as a hook got it, byte for byte, because signatures cover the bytes.</summary>
/// <param name="Method">GET, POST and the like.</param>
/// <param name="Path">The path of the address, without the query.</param>
/// <param name="Query">What follows the question mark, as it was sent.</param>
/// <param name="Headers">The headers.</param>
/// <param name="Body">The bytes.</param>
public sealed record HookRequest(
    string Method, string Path, string Query, IHeaderDictionary Headers, ReadOnlyMemory<byte> Body);
