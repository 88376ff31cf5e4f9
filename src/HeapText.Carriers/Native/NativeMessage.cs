using System.Text.Json.Serialization;

namespace HeapText.Carriers.Native;

/// <summary>One message out, as the gateway gets it.</summary>
internal sealed record NativeMessage(
    string Id, string From, string To, string Text, string Encoding, int Segments, string ExpiresAt);

[JsonSerializable(typeof(NativeMessage))]
[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase)]
internal sealed partial class NativeJson : JsonSerializerContext;
