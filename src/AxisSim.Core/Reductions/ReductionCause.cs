using AxisSim.Core.Batches;
using AxisSim.Core.Motion;
using AxisSim.Core.Motors;
using AxisSim.Core.Mount;
using AxisSim.Core.Sky;
using AxisSim.Core.Studies;

namespace AxisSim.Core.Reductions;

/// <summary>What stands against a greater rate: the first rate that fails is run again with one thing changed at a time.</summary>
/// <remarks>
/// The clutch, if it slips. Where the closed form has far more torque than is needed at the hardest moment, and has not lost half of it to the speed: full-stepping,
/// when microstepping throughout cures. Then the supply, if ten times the voltage cures; resonance, if the torque would do by far; the greatest torque among the loads
/// whose absence cures; else several together.
/// </remarks>
internal static class ReductionCause
{
    /// <summary>Below this share of the closed form, the torque would do by far (as in the study of failures).</summary>
    private const double FarMore = 0.6;

    /// <summary>Below this share of the torque at rest, the speed has taken most of it (a choice of ours).</summary>
    private const double Half = 0.5;

    private static readonly Counterfactual[] s_changes = [Counterfactual.AmpleVoltage, Counterfactual.WithoutImbalance, Counterfactual.WithoutFriction, Counterfactual.TenthOfInertia, Counterfactual.WithoutFullStepping];

    /// <summary>Finds the bound of every reduction.</summary>
    public static void Find(IReadOnlyList<ReductionWork> works, ReductionBatch batch)
    {
        foreach (ReductionWork work in works.Where(work => work.Rates.FirstBad is null))
        {
            work.Bound = work.Top;
        }

        ReductionWork[] failing = [.. works.Where(work => work.Rates.FirstBad is not null)];
        MountSetup[] first = [.. failing.Select(work => work.AtRate(work.Rates.FirstBad!.Value))];
        BatchEnd[] ends = batch.Ends([.. first.SelectMany((setup, i) => s_changes.Select(change => FailureStudy.Changed(setup, failing[i].Axis, change)))]);
        for (int i = 0; i < failing.Length; i++)
        {
            ReductionWork work = failing[i];
            bool[] arrives = [.. ends.Skip(i * s_changes.Length).Take(s_changes.Length).Select(end => end == BatchEnd.Arrives)];
            work.Shares = Hardest(first[i], work.Axis);
            work.Bound = work.RateEnd switch
            {
                BatchEnd.ClutchSlips => ReductionBound.Clutch,
                BatchEnd.NotWorkable or BatchEnd.Broken => ReductionBound.NotSimulated,
                _ => Of(work.Shares, work.Facts.TorqueAtRestNewtonMetres / work.Gain, arrives),
            };
        }
    }

    private static ReductionBound Of(TorqueShares shares, double torqueAtRest, bool[] arrives)
    {
        (ReductionBound Bound, double Torque, bool Cures)[] loads =
        [
            (ReductionBound.Imbalance, shares.ImbalanceNewtonMetres, arrives[1]),
            (ReductionBound.Friction, shares.FrictionNewtonMetres + shares.WormLossNewtonMetres, arrives[2]),
            (ReductionBound.Inertia, shares.InertiaNewtonMetres, arrives[3]),
        ];
        (ReductionBound Bound, double Torque, bool Cures)[] curing = [.. loads.Where(load => load.Cures)];
        bool spent = shares.AvailableNewtonMetres < Half * torqueAtRest;
        bool plenty = loads.Sum(load => load.Torque) + shares.WindNewtonMetres < FarMore * shares.AvailableNewtonMetres;
        return plenty && !spent && arrives[4] ? ReductionBound.FullStepping
            : arrives[0] ? ReductionBound.SupplyVoltage
            : plenty ? ReductionBound.Resonance
            : curing.Length > 0 ? curing.MaxBy(load => load.Torque).Bound
            : ReductionBound.Combined;
    }

    /// <summary>The torques where the closed form leaves least, along the plan of a move.</summary>
    public static TorqueShares Hardest(MountSetup setup, MountAxis axis)
    {
        const int places = 400;
        AxisModel model = setup.Axis(axis);
        var plan = new MovePlan(setup);
        var need = new ShaftNeed(setup, axis, plan);
        double Formula(double speed) => PullOutLaw.OnDrive(model.Motor, model.Drive, speed > model.Drive.ChangeoverRadiansPerSecond, model.Drive.SupplyVolts, speed);
        (double time, double available) = Enumerable.Range(1, places - 1)
            .Select(i => plan.SlewSeconds * i / places)
            .Select(time => (Time: time, At: need.At(time)))
            .Select(point => (point.Time, Available: Formula(Math.Abs(point.At.Speed)), Need: Math.Abs(point.At.Torque)))
            .OrderByDescending(point => point.Need - point.Available)
            .Select(point => (point.Time, point.Available))
            .First();
        return FailureStudy.Shares(setup, axis, plan, time, available);
    }
}
