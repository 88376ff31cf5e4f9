using Microsoft.Playwright;

namespace HeapText.Service.Tests.Browser;

/// <summary>The browser of the system; nothing is downloaded, and where there is none the test fails.</summary>
internal sealed class Chromium : IAsyncDisposable
{
    private static readonly string[] Quiet =
    [
        "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking",
        "--disable-component-update", "--disable-sync",
    ];

    private readonly IPlaywright _driver;
    private readonly IBrowser _browser;

    private Chromium(IPlaywright driver, IBrowser browser)
    {
        _driver = driver;
        _browser = browser;
    }

    public static async Task<Chromium> Start()
    {
        var driver = await Playwright.CreateAsync();
        var browser = await driver.Chromium.LaunchAsync(new BrowserTypeLaunchOptions
        {
            ExecutablePath = Environment.GetEnvironmentVariable("CHROMIUM") ?? "/usr/bin/chromium",
            Args = Quiet,
        });
        return new Chromium(driver, browser);
    }

    /// <summary>A page whose script errors and policy violations fail the test by <paramref name="faults"/>.</summary>
    public async Task<IPage> Open(string url, int width, List<string> faults)
    {
        var page = await _browser.NewPageAsync(new BrowserNewPageOptions
        {
            ViewportSize = new ViewportSize { Width = width, Height = 900 },
        });
        page.SetDefaultTimeout(45_000);
        page.PageError += (_, error) => faults.Add(error);
        page.Console += (_, message) =>
        {
            if (message.Type == "error") faults.Add(message.Text);
        };
        await page.GotoAsync(url);
        return page;
    }

    public async ValueTask DisposeAsync()
    {
        await _browser.DisposeAsync();
        _driver.Dispose();
    }
}
