using AxisSim.Core.Batches;
using AxisSim.Core.Outcomes;

namespace AxisSim.Core.Questions;

/// <summary>Finds what makes moves fail, by running each again with one thing changed; the one rule of all studies.</summary>
/// <remarks>
/// <para>The clutch, if it slips, or if a rigid one alone cures. Swings, if the plan needs less than <see cref="Plenty"/> of the torque that the closed form gives at every moment
/// up to the failure, and a damped rotor or microstepping cures, or more voltage does not. The supply, if ten times the voltage cures. Else the load of greatest share among those whose absence
/// cures. The loss in worm and stages goes with the loads in proportion, so that it does not change their order; it is named itself only where nothing else cures. If no single change cures: several loads together, with the pairs of changes that do.</para>
/// <para>A damped rotor tells swings from a lack of torque because damping acts on differences of speed alone: it adds nothing to what the motor can carry at a steady speed.</para>
/// </remarks>
internal static class LimitStudy
{
    /// <summary>Needing less than this share of the closed form, the torque would do (a choice of ours: pull-out in full-stepping may lie a third below it without any resonance).</summary>
    public const double Plenty = 0.6;

    /// <summary>What makes each of some cases fail, given how it ended.</summary>
    public static LimitFinding[] Find(Asker ask, IReadOnlyList<(BatchCase Case, BatchResult Result)> failures)
    {
        OneChange[][] changes = [.. failures.Select(one => one.Result.End == MoveEnd.Stalls || one.Result.End == MoveEnd.ClutchSlips ? OneChanges.For(one.Case.Setup, one.Case.Axis).ToArray() : [])];
        BatchResult[] ends = ask.Ask([.. failures.SelectMany((one, i) => changes[i].Select(change => Changed(one.Case, change)))]);
        var findings = new LimitFinding[failures.Count];
        int at = 0;
        for (int i = 0; i < failures.Count; i++)
        {
            (BatchCase item, BatchResult result) = failures[i];
            ChangeResult[] reruns = [.. changes[i].Select((change, k) => new ChangeResult(change, ends[at + k].End == MoveEnd.Arrives))];
            at += reruns.Length;
            double until = double.IsNaN(result.FailureSeconds) ? double.PositiveInfinity : result.FailureSeconds;
            TorqueShares shares = TorqueShares.Hardest(item.Setup, item.Axis, until);
            findings[i] = new LimitFinding(Rule(result.End, shares, reruns), shares, reruns, []);
        }

        return WithPairs(ask, failures, findings);
    }

    /// <summary>The rule.</summary>
    public static Limit Rule(MoveEnd end, TorqueShares shares, IReadOnlyList<ChangeResult> reruns)
    {
        bool Cures(OneChange change) => reruns.Any(rerun => rerun.Change == change && rerun.Arrives);
        if (end is MoveEnd.Broken or MoveEnd.NotWorkable)
        {
            return Limit.NotSimulated;
        }

        if (end == MoveEnd.ClutchSlips || Cures(OneChange.RigidClutch))
        {
            return Limit.Clutch;
        }

        bool plenty = shares.NeededShare < Plenty;
        if (plenty && (Cures(OneChange.DampedRotor) || Cures(OneChange.WithoutFullStepping) || !Cures(OneChange.AmpleVoltage)))
        {
            return Limit.Swings;
        }

        if (Cures(OneChange.AmpleVoltage))
        {
            return Limit.SupplyVoltage;
        }

        (Limit Limit, double Share, OneChange Change)[] curing =
        [
            .. new[]
            {
                (Limit: Limit.Imbalance, Share: shares.ImbalanceNewtonMetres, Change: OneChange.WithoutImbalance),
                (Limit: Limit.Wind, Share: shares.WindNewtonMetres, Change: OneChange.WithoutWind),
                (Limit: Limit.Friction, Share: shares.BearingsNewtonMetres, Change: OneChange.WithoutFriction),
                (Limit: Limit.Inertia, Share: shares.InertiaNewtonMetres, Change: OneChange.TenthOfInertia),
            }.Where(load => Cures(load.Change)),
        ];
        return curing.Length > 0 ? curing.MaxBy(load => load.Share).Limit : Cures(OneChange.WithoutTrainLoss) ? Limit.TrainLoss : Limit.Combined;
    }

    private static BatchCase Changed(BatchCase item, OneChange change) => item with { Setup = change.Apply(item.Setup, item.Axis) };

    private static LimitFinding[] WithPairs(Asker ask, IReadOnlyList<(BatchCase Case, BatchResult Result)> failures, LimitFinding[] findings)
    {
        (int Index, ChangePair Pair)[] asked =
        [
            .. from i in Enumerable.Range(0, findings.Length)
               where findings[i].Changes.Count > 0 && !findings[i].Changes.Any(change => change.Arrives)
               from pair in Pairs([.. findings[i].Changes.Select(change => change.Change)])
               select (i, pair),
        ];
        BatchResult[] ends = ask.Ask([.. asked.Select(one => Changed(Changed(failures[one.Index].Case, one.Pair.First), one.Pair.Second))]);
        foreach (var group in asked.Zip(ends).Where(one => one.Second.End == MoveEnd.Arrives).GroupBy(one => one.First.Index))
        {
            findings[group.Key] = findings[group.Key] with { Pairs = [.. group.Select(one => one.First.Pair)] };
        }

        return findings;
    }

    private static IEnumerable<ChangePair> Pairs(OneChange[] changes) =>
        from i in Enumerable.Range(0, changes.Length)
        from k in Enumerable.Range(i + 1, changes.Length - i - 1)
        select new ChangePair(changes[i], changes[k]);
}
