using AxisSim.Cli;
using AxisSim.Cli.Hosting;
using AxisSim.Tests;
using Microsoft.Playwright;

namespace AxisSim.BrowserTests;

/// <summary>One browser for all tests, without any network, and the reports that they look at.</summary>
public sealed class Browser : IAsyncLifetime
{
    /// <summary>The browser may not speak to anybody, ask anything or draw on a graphics card.</summary>
    private static readonly string[] Flags =
    [
        "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking", "--disable-component-update", "--disable-sync",
    ];

    private readonly string folder = Directory.CreateTempSubdirectory("axissim-browser-").FullName;
    private readonly Dictionary<string, string> reports = new(StringComparer.Ordinal);
    private IPlaywright? playwright;
    private IBrowser? browser;

    /// <summary>The browser of the system; null when there is none.</summary>
    private static string? Program => (Environment.GetEnvironmentVariable("PATH") ?? "")
        .Split(Path.PathSeparator)
        .Select(place => Path.Combine(place, "chromium"))
        .FirstOrDefault(File.Exists);

    /// <summary>Skips the test where there is no browser; on a build machine that is a failure.</summary>
    public static void Need()
    {
        const string Reason = "chromium is not installed: apt-get install chromium";
        if (Program is null && Environment.GetEnvironmentVariable("CI") == "true")
        {
            Assert.Fail(Reason);
        }

        Skip.If(Program is null, Reason);
    }

    /// <inheritdoc/>
    public async Task InitializeAsync()
    {
        if (Program is not { } path)
        {
            return;
        }

        playwright = await Playwright.CreateAsync();
        browser = await playwright.Chromium.LaunchAsync(new BrowserTypeLaunchOptions { ExecutablePath = path, Args = Flags });
    }

    /// <inheritdoc/>
    public async Task DisposeAsync()
    {
        if (browser is not null)
        {
            await browser.DisposeAsync();
        }

        playwright?.Dispose();
        Directory.Delete(folder, recursive: true);
    }

    /// <summary>Opens the report of a shipped scenario; every address that the page asks for besides itself goes to the list.</summary>
    public async Task<IPage> Open(string scenario, int width, List<string> asked)
    {
        string address = new Uri(Report(scenario)).AbsoluteUri;
        IBrowserContext context = await browser!.NewContextAsync(new BrowserNewContextOptions { ViewportSize = new ViewportSize { Width = width, Height = 800 } });
        IPage page = await context.NewPageAsync();
        page.Request += (_, request) =>
        {
            if (request.Url != address)
            {
                asked.Add(request.Url);
            }
        };
        await page.GotoAsync(address);
        return page;
    }

    private string Report(string scenario)
    {
        if (!reports.TryGetValue(scenario, out string? path))
        {
            string place = Path.Combine(folder, scenario);
            int code = Cli.Program.Run(["report", Repository.PathOf("scenarios", scenario + ".toml"), "--out", place, "--date", "2026-03-20"], TextWriter.Null, TextWriter.Null);
            Assert.True(code is ExitCodes.Good or ExitCodes.PredictedFailure, $"axissim report ended with {code}");
            reports[scenario] = path = Path.Combine(place, "report.html");
        }

        return path;
    }
}
