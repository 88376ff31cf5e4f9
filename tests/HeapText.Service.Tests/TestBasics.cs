using System.Globalization;
using System.Net.Http.Json;
using System.Text.Json;

namespace HeapText.Service.Tests;

/// <summary>Short names for what nearly every test says.</summary>
internal static class TestBasics
{
    public static CancellationToken Token => TestContext.Current.CancellationToken;

    public static CultureInfo Invariant => CultureInfo.InvariantCulture;

    public static async Task<JsonElement> Json(this HttpResponseMessage answer) =>
        await answer.Content.ReadFromJsonAsync<JsonElement>(Token);

    public static async Task<string> Detail(this HttpResponseMessage answer)
    {
        Assert.Equal("application/problem+json", answer.Content.Headers.ContentType?.MediaType);
        return (await answer.Json()).GetProperty("detail").GetString()!;
    }
}
