using AxisSim.Core.Payloads;
using AxisSim.Core.Sky;
using AxisSim.Core.Studies;

namespace AxisSim.Cli.Text.Moves;

/// <summary>A place of the counterweight that brings the imbalance of the polar axis down far enough, when there is one.</summary>
/// <param name="Words">The place.</param>
/// <param name="Settings">The settings that put it there.</param>
internal sealed record CounterweightMove(string Words, IReadOnlyList<string> Settings)
{
    /// <summary>The settings for the nearest place, where the words name one; empty else.</summary>
    public IReadOnlyList<string> Nearby { get; init; } = [];

    /// <summary>The words without the nearest place.</summary>
    public string ShortWords { get; init; } = Words;

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
        bool Enough(double metres) =>
            Worst(report, MountLoadBuilder.FromBodies(payload with { Counterweight = weight with { DistanceMetres = metres, MassKilograms = mass } }, report.LatitudeRadians)) <= newtonMetres;
        if (!Enough(distance))
        {
            return null;
        }

        string setting = $"counterweight.distance={Say.Number(distance)} m";
        if (mass != weight.MassKilograms)
        {
            return new(
                $"at {Say.With(distance, "m")} from the polar axis instead of {Say.With(weight.DistanceMetres, "m")}, with {Say.With(mass, "kg")} instead of {Say.With(weight.MassKilograms, "kg")}, does that",
                [setting, $"counterweight.mass={Say.Number(mass)} kg"]);
        }

        double nearest = Nearest(weight.DistanceMetres, distance, Enough);
        string now = $"from the polar axis instead of {Say.With(weight.DistanceMetres, "m")}";
        string best = $"at {Say.With(distance, "m")} {now} does that";
        return nearest == distance
            ? new(best, [setting])
            : new($"does that from {Say.With(nearest, "m")} on {now}, and balances best at {Say.With(distance, "m")}", [setting]) { Nearby = [$"counterweight.distance={Say.Number(nearest)} m"], ShortWords = best };
    }

    /// <summary>The nearest whole millimetre on the way to the balancing distance that is enough: halving works, for the imbalance falls all the way there.</summary>
    private static double Nearest(double from, double to, Func<double, bool> enough)
    {
        const double Millimetre = 1e-3;
        int steps = (int)Math.Round(Math.Abs(to - from) / Millimetre);
        double At(int step) => step == steps ? to : Math.Round(to + (Math.Sign(from - to) * (steps - step) * Millimetre), 3);
        int bad = -1, good = steps;
        while (good - bad > 1)
        {
            int middle = (good + bad) / 2;
            (bad, good) = enough(At(middle)) ? (bad, middle) : (middle, good);
        }

        return At(good);
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
