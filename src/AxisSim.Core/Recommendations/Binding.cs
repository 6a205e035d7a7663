using AxisSim.Core.Batches;
using AxisSim.Core.Mount;
using AxisSim.Core.Outcomes;
using AxisSim.Core.Questions;
using AxisSim.Core.Sky;
using AxisSim.Core.Stepping.Jobs;

namespace AxisSim.Core.Recommendations;

/// <summary>What stands against a greater slew rate with the recommended ramp, current and changeover, with its figures.</summary>
/// <param name="Limit">What it is.</param>
/// <param name="Finding">What re-runs of the first failing rate showed; null where a bound or the temperature ends it.</param>
/// <param name="Greatest">The greatest rate with the recommended ramp, current and changeover, at the margin.</param>
/// <param name="VoltageLimitsFromRadiansPerSecond">Axis rate above which the supply cannot drive the full current, by the closed form, rad/s.</param>
public sealed record Binding(Limit Limit, LimitFinding? Finding, GreatestRate Greatest, double VoltageLimitsFromRadiansPerSecond)
{
    /// <summary>Names it: the end of the search, or what makes the first failing rate fail in the first of the load cases that does.</summary>
    internal static Binding Of(Asker ask, MountSetup setup, AxisSettings settings, GreatestRate greatest, IReadOnlyList<LoadCase> loads, double margin)
    {
        MountAxis axis = loads[0].Move.Axis;
        AxisModel model = settings.Apply(setup, axis).Axis(axis);
        double from = SearchedSettings.VoltageLimitedSpeed(model) / model.Train.TotalRatio;
        if (greatest.Cap is { } cap)
        {
            return new Binding(cap, null, greatest, from);
        }

        AxisSettings failing = settings with { SlewRateRadiansPerSecond = greatest.FirstFailingRadiansPerSecond };
        BatchCase[] cases = [.. loads.Select(load => load.With(setup, failing, margin, RateFinder.ProbeRadians(failing)))];
        BatchResult[] results = ask.Ask(cases);
        int first = Array.FindIndex(results, result => result.End != MoveEnd.Arrives);
        LimitFinding finding = LimitStudy.Find(ask, [(cases[Math.Max(0, first)], results[Math.Max(0, first)])])[0];
        return new Binding(finding.Limit, finding, greatest, from);
    }
}
