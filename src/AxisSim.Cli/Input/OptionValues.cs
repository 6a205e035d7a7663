using System.Globalization;
using AxisSim.Core.Mount;
using AxisSim.Core.Sky;
using AxisSim.Core.Stepping;
using AxisSim.Files.Scenarios;
using AxisSim.Files.Units;

namespace AxisSim.Cli.Input;

/// <summary>Values of options, checked; each check adds its problem and goes on, so that all are reported at once.</summary>
internal sealed class OptionValues
{
    private const double ShortestStep = 0.1e-6;
    private const double LongestStep = 1e-3;
    private const double Slack = 1e-12;
    private const int MostThreads = 1024;

    /// <summary>Problems found so far.</summary>
    public List<Problem> Problems { get; } = [];

    /// <summary>Whether JSON is wanted.</summary>
    public bool Json(string? format)
    {
        if (format is not (null or "text" or "json"))
        {
            Add("--format", $"\"{format}\"", "text or json", "--format json");
        }

        return format == "json";
    }

    /// <summary>The axes asked for, before it is known which the scenario has; null means all.</summary>
    public MountAxis? Axis(string? axis)
    {
        if (axis is not (null or "polar" or "declination" or "both"))
        {
            Add("--axis", $"\"{axis}\"", "polar, declination or both", "--axis polar");
        }

        return axis switch { "polar" => MountAxis.Polar, "declination" => MountAxis.Declination, _ => null };
    }

    /// <summary>The step asked for, s.</summary>
    public double Step(string? step)
    {
        if (step is null)
        {
            return StepChoice.DefaultSeconds;
        }

        QuantityReading reading = QuantityText.Read(step, Dimension.Time);
        if (reading.Failure is { } failure)
        {
            Add("--step", $"\"{step}\" ({failure})", "a time with its unit, from 0.1us to 1000us", "--step 50us");
        }
        else if (!(reading.Si >= ShortestStep - Slack && reading.Si <= LongestStep + Slack))
        {
            Add("--step", $"\"{step}\"", "a time from 0.1us to 1000us; a step that is too long for the speed is shortened", "--step 50us");
        }

        return reading.Si;
    }

    /// <summary>Threads; 0 for as many as there are cores.</summary>
    public int Threads(string? threads) => WholeNumber.Read(Problems, "--threads", threads, 0, 1, MostThreads, "--threads 4, or nothing for all cores");

    /// <summary>The date to print; today without the option.</summary>
    public DateOnly Date(string? date)
    {
        if (date is null)
        {
            return DateOnly.FromDateTime(TimeProvider.System.GetLocalNow().DateTime);
        }

        if (!DateOnly.TryParseExact(date, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out DateOnly read))
        {
            Add("--date", $"\"{date}\"", "a date of the calendar as year, month and day, with dashes", "--date 2026-03-20");
        }

        return read;
    }

    /// <summary>The axes to work on: those asked for that the scenario has.</summary>
    public IReadOnlyList<MountAxis> Axes(MountAxis? asked, MountSetup setup)
    {
        IReadOnlyList<MountAxis> there = AxisNames.Of(setup);
        if (asked is not { } axis)
        {
            return there;
        }

        if (!there.Contains(axis))
        {
            string has = Say.List([.. there.Select(one => one.Key())]);
            Add("--axis", $"{axis.Key()}, but this scenario has no [{axis.Key()}] section", has, $"--axis {there[0].Key()}, or add a [{axis.Key()}] section to the file");
            return [];
        }

        return [axis];
    }

    private void Add(string option, string found, string allowed, string fix) => Problems.Add(new Problem(option, 0, 0, "", found, allowed, fix));
}
