using System.Text;
using HeapText.Carriers.Mapped;

namespace HeapText.Service.Hooks;

/// <summary>Sends the answer a line's form has built.</summary>
internal sealed class HookResult(HookAnswer answer) : IResult
{
    /// <inheritdoc/>
    public async Task ExecuteAsync(HttpContext httpContext)
    {
        var response = httpContext.Response;
        response.StatusCode = answer.Status;
        foreach (var (name, value) in answer.Headers) response.Headers[name] = value;
        var body = Encoding.UTF8.GetBytes(answer.Body);
        response.ContentType = answer.ContentType;
        if (answer.Status == StatusCodes.Status204NoContent) return;
        response.ContentLength = body.Length;
        await response.Body.WriteAsync(body, httpContext.RequestAborted);
    }
}
