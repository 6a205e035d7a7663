using System.Globalization;
using System.Text;
using AxisSim.Cli;
using AxisSim.Tests.Golden;
using static AxisSim.Tests.EndToEnd.InProcess;

namespace AxisSim.Tests.EndToEnd;

/// <summary>The command report end to end, in process.</summary>
public sealed class ReportProgramTests : IDisposable
{
    private static readonly string Nominal = Repository.PathOf("scenarios", "nominal.toml");
    private static readonly string Stalls = Repository.PathOf("scenarios", "heavy-reflector-stalls.toml");
    private readonly string folder = Directory.CreateTempSubdirectory("axissim-test-").FullName;

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [Theory]
    [InlineData("2026-3-20")]
    [InlineData("20.03.2026")]
    [InlineData("2026-02-30")]
    [InlineData("today")]
    [InlineData("")]
    public void A_date_that_is_none_is_exit_2_and_nothing_is_written(string date)
    {
        foreach (string culture in new[] { "", "ar-SA", "de-DE" })
        {
            (int code, string output, string error) = Cultures.Under(culture, () => Run("report", Nominal, "--out", folder, "--date", date));
            Assert.Equal(2, code);
            Assert.Empty(output);
            Assert.Contains("--date", error, StringComparison.Ordinal);
            Assert.Contains("--date 2026-03-20", error, StringComparison.Ordinal);
            Assert.Empty(Directory.GetFiles(folder));
        }
    }

    [Fact]
    public void All_problems_are_told_at_once()
    {
        string file = Path.Combine(folder, "file");
        File.WriteAllText(file, "");
        (int code, _, string error) = Run("report", Nominal, "--date", "x", "--set", "polar.motion.ramp_tim=2 s");
        Assert.Equal(2, code);
        Assert.Contains("2 problems", error, StringComparison.Ordinal);
        (code, _, error) = Run("report", Nominal, "--out", Path.Combine(file, "inside"));
        Assert.Equal(2, code);
        Assert.Contains("which is a file and not a folder", error, StringComparison.Ordinal);
    }

    [Fact]
    [Trait("speed", "slow")]
    public void The_same_date_gives_the_same_bytes_and_no_date_gives_today()
    {
        string a = Path.Combine(folder, "a"), b = Path.Combine(folder, "b"), now = Path.Combine(folder, "now");
        Assert.Equal(0, Run("report", Nominal, "--out", a, "--date", "2026-03-20").Code);
        Assert.Equal(0, Run("report", Nominal, "--out", b, "--date", "2026-03-20").Code);
        Assert.Equal(["report.html", "sheet.pdf"], Directory.GetFiles(a).Select(path => Path.GetFileName(path)).Order(StringComparer.Ordinal));
        foreach (string name in new[] { "report.html", "sheet.pdf" })
        {
            Assert.Equal(File.ReadAllBytes(Path.Combine(a, name)), File.ReadAllBytes(Path.Combine(b, name)));
        }

        string before = Today();
        Assert.Equal(0, Run("report", Nominal, "--out", now).Code);
        string page = File.ReadAllText(Path.Combine(now, "report.html"));
        Assert.True(page.Contains(before, StringComparison.Ordinal) || page.Contains(Today(), StringComparison.Ordinal));
        Assert.Equal(File.ReadAllText(Path.Combine(a, "report.html")), page.Replace(before, "2026-03-20", StringComparison.Ordinal).Replace(Today(), "2026-03-20", StringComparison.Ordinal));
    }

    [Fact]
    [Trait("speed", "slow")]
    public void A_move_that_stalls_says_so_everywhere_and_is_exit_3()
    {
        (int code, string output, _) = Run("report", Stalls, "--out", folder, "--date", "2026-03-20");
        Assert.Equal(3, code);
        Assert.StartsWith("STALLS", output, StringComparison.Ordinal);
        Assert.Contains("Do not enter these settings", output, StringComparison.Ordinal);
        string page = File.ReadAllText(Path.Combine(folder, "report.html"));
        int warning = page.IndexOf("DO NOT ENTER THESE: the move stalls.", StringComparison.Ordinal);
        Assert.InRange(warning, page.IndexOf("<body>", StringComparison.Ordinal), page.IndexOf("<h1>", StringComparison.Ordinal));
        Assert.Contains("DO NOT ENTER THESE: the move stalls.", page[page.IndexOf("<h2 id=\"sheet\">", StringComparison.Ordinal)..], StringComparison.Ordinal);

        // What the screen of simulate says is said here as well: the same texts.
        Assert.Contains("What to try, polar axis", page, StringComparison.Ordinal);
        Assert.Contains("polar.motion.slew_rate=", page, StringComparison.Ordinal);
    }

    [Fact]
    public void Screen_text_says_what_was_written_and_what_to_do_next()
    {
        (int code, string output, string error) = Run("report", Nominal, "--out", folder, "--set", "move.end_polar=5 deg");
        Assert.Equal(0, code);
        Assert.Empty(error);
        Assert.Contains(Path.Combine(folder, "sheet.pdf"), output, StringComparison.Ordinal);
        Assert.Contains("What next", output, StringComparison.Ordinal);
        Assert.Contains("A4", output, StringComparison.Ordinal);
        Assert.Contains("move.end_polar=5 deg", File.ReadAllText(Path.Combine(folder, "report.html")), StringComparison.Ordinal);
        Assert.Contains("%PDF", Encoding.Latin1.GetString(File.ReadAllBytes(Path.Combine(folder, "sheet.pdf"))), StringComparison.Ordinal);
    }

    private static string Today() => DateTime.Now.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
}
