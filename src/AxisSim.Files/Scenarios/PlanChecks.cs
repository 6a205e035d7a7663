using System.Globalization;
using AxisSim.Core.Motion;
using AxisSim.Core.Mount;
using AxisSim.Core.Sky;
using AxisSim.Files.Keys;

namespace AxisSim.Files.Scenarios;

/// <summary>Whether the planned move ends within a day: a slip in a rate or an acceleration would be simulated for ever.</summary>
internal static class PlanChecks
{
    private const double DegreesPerRadian = 180.0 / Math.PI;
    private const double Century = 3.2e9;

    /// <summary>A value that will not do, and the least that would.</summary>
    private sealed record Slow(Entry Entry, string Found, double Least, string Unit);

    /// <summary>Reports each axis whose move would take longer; of two that follow one line, the one that asks for more.</summary>
    public static void Report(MountSetup setup, ValueSet values)
    {
        var slow = new List<Slow>();
        foreach (string axis in ScenarioKeys.Axes.Where(axis => LikeAxis.Has(values.Document, axis)))
        {
            MountAxis which = axis == "polar" ? MountAxis.Polar : MountAxis.Declination;
            if (Check(values, axis, setup.Move.Distance(which), setup.Axis(which).Motion) is { } found)
            {
                slow.Add(found);
            }
        }

        foreach (Slow worst in slow.GroupBy(found => (found.Entry.File, found.Entry.Line, found.Entry.Column)).Select(group => group.MaxBy(found => found.Least)!))
        {
            string least = $"{RoundedUp(worst.Least)} {worst.Unit}";
            values.Problems.Error(worst.Entry, worst.Found, $"at least {least} for this move: a planned move may take up to 24 h", ValueSet.Fix(worst.Entry, ScenarioKeys.Find(worst.Entry.Path)!, $"\"{least}\""));
        }
    }

    private static Slow? Check(ValueSet values, string axis, double distance, AxisMotion motion)
    {
        double seconds = Seconds(distance, motion);
        if (seconds <= MoveSettings.LongestPlanSeconds)
        {
            return null;
        }

        // The rate by itself, or else the ramp that never gets there.
        bool slow = distance / motion.SlewRateRadiansPerSecond > MoveSettings.LongestPlanSeconds || motion.Ramp.Seconds is not null;
        string path = slow ? $"{axis}.motion.slew_rate" : $"{axis}.motion.acceleration", unit = slow ? "deg/s" : "deg/s^2";
        double most = ScenarioKeys.Find(path)!.Maximum / DegreesPerRadian;
        double now = slow ? motion.SlewRateRadiansPerSecond : motion.PeakAcceleration;
        double least = Least(now, most, value => Seconds(distance, slow ? motion with { SlewRateRadiansPerSecond = value } : motion with { Ramp = Ramp.OfAcceleration(value) }));
        Entry entry = values.EntryOf(path);
        string turn = (distance * DegreesPerRadian).ToString("G4", CultureInfo.InvariantCulture);
        string time = seconds < Century ? (seconds / 3600.0).ToString("F1", CultureInfo.InvariantCulture) + " h" : "more than a hundred years";
        return new Slow(entry, $"{entry.Shown}, with which the move of {turn} deg takes {time}", least, unit);
    }

    // What is far too long need not be planned.
    private static double Seconds(double distance, AxisMotion motion)
    {
        double atLeast = motion.LeastSeconds(distance);
        return distance == 0.0 ? 0.0 : atLeast <= MoveSettings.LongestPlanSeconds ? MotionProfile.Create(distance, motion).DurationSeconds : atLeast;
    }

    // Halved on the logarithm until the digits that are shown stand.
    private static double Least(double tooLow, double most, Func<double, double> seconds)
    {
        const int Halvings = 60;
        double low = Math.Log(Math.Max(tooLow, double.Epsilon)), high = Math.Log(most);
        for (int i = 0; i < Halvings; i++)
        {
            double middle = 0.5 * (low + high);
            (low, high) = seconds(Math.Exp(middle)) <= MoveSettings.LongestPlanSeconds ? (low, middle) : (middle, high);
        }

        return Math.Exp(high);
    }

    private static string RoundedUp(double radians)
    {
        double degrees = radians * DegreesPerRadian, grain = Math.Pow(10.0, Math.Floor(Math.Log10(degrees)) - 2.0);
        return (Math.Ceiling(degrees / grain) * grain).ToString("G3", CultureInfo.InvariantCulture);
    }
}
