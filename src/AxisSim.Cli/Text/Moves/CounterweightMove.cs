using AxisSim.Core.Payloads;
using AxisSim.Core.Sky;
using AxisSim.Core.Studies;

namespace AxisSim.Cli.Text.Moves;

/// <summary>A place of the counterweight that brings the imbalance of the polar axis down far enough, when there is one.</summary>
/// <param name="Words">The place.</param>
/// <param name="Settings">The settings that put it there.</param>
internal sealed record CounterweightMove(string Words, IReadOnlyList<string> Settings)
{
    private const int PathPoints = 200;

    /// <summary>The move; null when the counterweight alone cannot do it.</summary>
    public static CounterweightMove? Try(MoveReport report, MountAxis axis, double newtonMetres)
    {
        if (axis != MountAxis.Polar || report.Payload is not { Counterweight: { } weight } payload)
        {
            return null;
        }

        CounterweightAdvice advice = BalanceStudy.Run(payload, report.LatitudeRadians).Counterweight;
        if (advice.Action is not (CounterweightAction.Move or CounterweightAction.AddMass))
        {
            return null;
        }

        // As it will be typed: to a millimetre and a hundred grams.
        double distance = Math.Round(advice.DistanceMetres, 3), mass = advice.Action == CounterweightAction.AddMass ? Math.Round(advice.MassKilograms, 1) : weight.MassKilograms;
        MountLoad moved = MountLoadBuilder.FromBodies(payload with { Counterweight = weight with { DistanceMetres = distance, MassKilograms = mass } }, report.LatitudeRadians);
        if (Worst(report, moved) > newtonMetres)
        {
            return null;
        }

        string place = $"{Say.With(distance, "m")} from the polar axis instead of {Say.With(weight.DistanceMetres, "m")}";
        string setting = $"counterweight.distance={Say.Number(distance)} m";
        return mass == weight.MassKilograms
            ? new(place, [setting])
            : new($"{place}, with {Say.With(mass, "kg")} instead of {Say.With(weight.MassKilograms, "kg")},", [setting, $"counterweight.mass={Say.Number(mass)} kg"]);
    }

    private static double Worst(MoveReport report, MountLoad load)
    {
        MountPose start = report.Setup.Move.Start, end = report.Setup.Move.End;
        return Enumerable.Range(0, PathPoints + 1).Max(i =>
        {
            double share = (double)i / PathPoints;
            return Math.Abs(load.GravityTorque(MountAxis.Polar, new MountPose(
                start.PolarRadians + (share * (end.PolarRadians - start.PolarRadians)),
                start.DeclinationRadians + (share * (end.DeclinationRadians - start.DeclinationRadians)))));
        });
    }
}
