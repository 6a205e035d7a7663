using System.Globalization;
using AxisSim.Core.Gearing;
using AxisSim.Core.Outcomes;
using AxisSim.Core.Sky;
using AxisSim.Report.Text;
using static AxisSim.Report.Sheets.Rows;

namespace AxisSim.Report.Sheets;

/// <summary>The numbers to enter into a controller, in the units that controllers ask for.</summary>
internal static class SettingRows
{
    /// <summary>The groups in the order in which set-up asks for them.</summary>
    public static IReadOnlyList<SheetGroup> Of(IReadOnlyList<SheetAxis> axes) =>
    [
        .. RateRows.Of(axes),
        new("Phase current and drive", [.. Drive(axes)]),
        GearRows.Of(axes),
        SupplyRows.Of(axes),
        new("Prediction", [
            Row(axes, "Load factor", "", Factor),
            .. axes.Any(axis => axis.Result.Rates is not null) ? [Row(axes, "Arrives up to a slew rate of", "deg/s", RateRoom.Reach)] : Array.Empty<SheetRow>(),
            .. axes.Any(axis => RateRoom.Bands(axis).Length > 0) ? [Row(axes, "Slower, it fails at", "deg/s", axis => RateRoom.Bands(axis) is { Length: > 0 } bands ? bands : "none found")] : Array.Empty<SheetRow>(),
            .. axes.Any(axis => axis.Result.Outcome is { Swing: not null } or { Verdict: MoveEnd.Stalls }) ? [Row(axes, "Swing of the rotor, of what it can hold", "%", Swing)] : Array.Empty<SheetRow>(),
            Row(axes, "Least torque margin", "%", axis => Say.Number(axis.Result.Outcome.Margin.Value * 100.0, 2)),
        ]),
    ];

    /// <summary>What to know about the numbers.</summary>
    public static IReadOnlyList<string> Notes(IReadOnlyList<SheetAxis> axes, IReadOnlyList<string> names)
    {
        double sidereal = Units.Arcseconds(SkyRates.MeanSiderealRadiansPerSecond);
        var notes = new List<string>
        {
            "A peak is the top of the phase sine, 1.414 times A rms: the drive's manual says which of them it asks for. A pulse is one microstep.",
            $"1 x sidereal is {sidereal.ToString("F7", CultureInfo.InvariantCulture)} arcsec/s (mean sidereal). Guiding adds its rate to tracking or takes it away. Which multiples a controller offers differs; these are common practice, no source.",
        };
        notes.AddRange(SupplyRows.Notes(axes));
        if (axes.Any(axis => axis.Result.Outcome.LoadFactor is not null))
        {
            notes.Add("Load factor: up to that factor on inertia, imbalance and friction together the move still arrives"
                + (axes.Any(axis => axis.Result.Rates is not null) ? "; up to that slew rate it does with the load as it is." : "."));
        }

        for (int i = 0; i < axes.Count; i++)
        {
            string[] numbers = [.. ExactReduction.GivenAsNumber(axes[i].Model.Train).Select(stage => $"{stage.Name} {Say.Number(stage.DrivenTeeth, ReductionDigits)}")];
            if (numbers.Length > 0)
            {
                notes.Add($"{names[i]}: given as a number, not by teeth: {string.Join(", ", numbers)}. A catalogue may have rounded it: count the teeth.");
            }
        }

        return notes;
    }

    /// <summary>A load factor in words: what fails has none; one below 1.3 is thin, for friction is seldom known to better than 30 %.</summary>
    public static string Factor(SheetAxis axis) => Factor(axis.Result.Outcome.LoadFactor);

    /// <summary>The same.</summary>
    public static string Factor(Core.Outcomes.LoadFactor? factor) => factor switch
    {
        null => "none: it fails",
        { AtLeast: true } one => $"at least {Say.Number(one.Value)}",
        { IsThin: true } one => $"{Say.Number(one.Value)}: thin",
        { } one => Say.Number(one.Value),
    };

    // What loses step has swung further than its field holds.
    private static string Swing(SheetAxis axis) => axis.Result.Outcome switch
    {
        { Swing: { } swing } => Say.Number(swing.Share * 100.0, 2),
        { Verdict: MoveEnd.Stalls } => "more: it loses step",
        _ => "none found",
    };

    private static IEnumerable<SheetRow> Drive(IReadOnlyList<SheetAxis> axes)
    {
        yield return Row(axes, "Slewing", "A peak; rms", axis => Current(axis.Model.Drive.SlewCurrentAmperes));
        yield return Row(axes, "Tracking", "A peak; rms", axis => Current(axis.Model.Drive.TrackingCurrentAmperes));
        yield return Row(axes, "Holding", "A peak; rms", axis => Current(axis.Model.Drive.HoldingCurrentAmperes));
        yield return Row(axes, "Delay to the lower current", "s", axis => Entered(axis.Model.Drive.CurrentFallDelaySeconds));
        if (axes.All(axis => double.IsPositiveInfinity(axis.Model.Drive.ChangeoverRadiansPerSecond)))
        {
            yield return Row(axes, "Changeover to full steps", "", _ => "never");
            yield break;
        }

        SheetRow Changeover(string name, string unit, Func<SheetAxis, double> value) => Row(axes, name, unit, axis => double.IsFinite(axis.Model.Drive.ChangeoverRadiansPerSecond) ? Entered(value(axis)) : "never");
        yield return Changeover("Changeover to full steps", "rpm", axis => Units.Rpm(axis.Model.Drive.ChangeoverRadiansPerSecond));
        yield return Changeover("", "full steps/s", axis => axis.Figures.FullSteps(axis.Figures.ChangeoverRadiansPerSecond));
        yield return Changeover("", "deg/s", axis => Units.Degrees(axis.Figures.ChangeoverRadiansPerSecond));
        yield return Changeover("", "x sidereal", axis => axis.Figures.ChangeoverRadiansPerSecond / SkyRates.MeanSiderealRadiansPerSecond);
    }

    private static string Current(double peak) => $"{Say.Number(peak)}; {Say.Number(peak / Math.Sqrt(2.0))}";
}
