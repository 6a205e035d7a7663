using System.Globalization;
using System.Text.RegularExpressions;
using AxisSim.Core.Sky;
using AxisSim.Core.Studies;
using AxisSim.Files.Scenarios;
using AxisSim.Report.Sheets;
using AxisSim.Tests.Unit.Plots;
using AxisSim.Tests.Unit.Report.Pages;

namespace AxisSim.Tests.Unit.Report.Sheets;

/// <summary>A sheet in a controller's own units: the numbers stand for what they say, and the verdict is that of the move with them.</summary>
[Trait("speed", "slow")]
public sealed partial class TypedSheetTests
{
    private const string Controller = """

        [controller]
        name = "box on the pier"

        [[controller.settings]]
        name = "ramp"
        sets = "ramp_time"
        unit = "0.4 s"
        least = 1
        greatest = 9

        [[controller.settings]]
        name = "max"
        sets = "slew_rate"
        unit = "0.7 deg/s"

        [[controller.settings]]
        name = "run"
        sets = "slew_current"
        unit = "0.25 A"

        """;

    [Fact]
    public void Numbers_to_type_are_run_as_typed()
    {
        SettingsSheet sheet = Sheet(File.ReadAllText(Repository.PathOf("scenarios", "heavy-reflector.toml")) + Controller);

        // Polar: 1.5 s is 3.75 units, so 4; 3 deg/s is 4.29, so 4; 0.9 A is 3.6, and 1 A is the rated current. Declination: 1.2 s is 3 units.
        Assert.Equal("Numbers to type into box on the pier", sheet.Typed!.Title);
        Assert.Equal(["ramp (ramp time): 1 is 0.4 s: 4 (1.6 s) | 3 (1.2 s)", "max (slew rate): 1 is 0.7 deg/s: 4 (2.8 deg/s) | 4 (2.8 deg/s)", "run (slew current): 1 is 0.25 A: 4 (1 A) | 4 (1 A)"],
            sheet.Typed.Settings.Select(row => $"{row.Name}: {row.Unit}: {string.Join(" | ", row.Values)}"));
        Assert.StartsWith("Simulated with both axes as typed: ARRIVES", sheet.Typed.Verdict, StringComparison.Ordinal);

        // The same by the way of a user: the values laid over the file.
        Scenario typed = ScenarioReader.ReadFile(Repository.PathOf("scenarios", "heavy-reflector.toml"), ["polar.motion.ramp_time=1.6 s", "polar.motion.slew_rate=2.8 deg/s", "polar.drive.slew_current=1 A"]).Scenario!;
        string[] factors = [.. AxisNames.Of(typed.Setup).Select(axis => SettingRows.Factor(MoveStudy.Run(typed.Setup, axis, new MoveOptions()).Outcome.LoadFactor))];
        Assert.Equal(factors, sheet.Typed.Results.Single(row => row.Name == "Load factor").Values);
        Assert.Null(sheet.Warning);
        Legible(sheet);
    }

    [Fact]
    public void Numbers_that_fail_are_told_before_anything_else()
    {
        // The rescued mount arrives at its rated ramp of 0.4 s; a controller whose ramps end at 0.05 s cannot do that.
        string text = Regex.Replace(File.ReadAllText(Repository.PathOf("scenarios", "heavy-reflector-rescued.toml")) + Controller, "unit = \"0.4 s\"\r?\nleast = 1\r?\ngreatest = 9", "unit = \"0.05 s\"\nleast = 1\ngreatest = 1");
        SettingsSheet sheet = Sheet(text);
        Assert.StartsWith("ARRIVES", sheet.Verdict, StringComparison.Ordinal);
        Assert.StartsWith("DO NOT TYPE THE NUMBERS FOR box on the pier", sheet.Warning, StringComparison.Ordinal);
        Assert.Contains(sheet.Typed!.Notes, note => note.StartsWith("Polar axis, ramp: 0.4 s are wanted, and the controller takes no number on the safe side of it. 1 is the nearest", StringComparison.Ordinal));
        Assert.Contains("see below", sheet.Typed.Settings[0].Values[0], StringComparison.Ordinal);
        Legible(sheet);
    }

    [Fact]
    public void Numbers_that_are_exact_are_the_move_that_was_run()
    {
        string text = File.ReadAllText(Repository.PathOf("scenarios", "heavy-reflector.toml")) + "\n[[controller.settings]]\nname = \"ramp\"\nsets = \"ramp_time\"\nunit = \"0.1 s\"\n";
        SettingsSheet sheet = Sheet(text);
        Assert.Equal("Simulated with both axes as typed: " + sheet.Verdict, sheet.Typed!.Verdict);
        Assert.Equal(sheet.Settings.Single(group => group.Name == "Prediction").Rows[0].Values, sheet.Typed.Results.Single(row => row.Name == "Load factor").Values);
        Assert.Empty(sheet.Typed.Notes);
    }

    [Fact]
    public void The_move_has_the_names_of_the_sky()
    {
        string move = Assert.Single(ShippedReports.Page("heavy-reflector").Sheet.Checks, check => Hand().IsMatch(check));
        Assert.Contains("from hour angle -0.33 h (20 min east of the meridian), declination 10 deg, telescope west of the pier, to hour angle -5 h (5 h east of the meridian), declination 55 deg, telescope west of the pier.", move, StringComparison.Ordinal);
    }

    private static SettingsSheet Sheet(string text)
    {
        Scenario scenario = ScenarioReader.ReadText(text, "mount.toml", []).Scenario!;
        return ShippedReports.Make(scenario, string.Create(CultureInfo.InvariantCulture, $"{scenario.Name}")).Page.Sheet;
    }

    private static void Legible(SettingsSheet sheet)
    {
        foreach (SheetFigure side in SheetFigure.Both(sheet))
        {
            using Texts texts = new();
            side.Draw(texts);
            Assert.Null(texts.Fault(side));
            Assert.True(side.TextSize(texts) >= 7.0 * 96.0 / 72.0, $"text of {side.TextSize(texts)} px");
        }
    }

    [GeneratedRegex("^Turn both axes by hand")]
    private static partial Regex Hand();
}
