using System.Runtime.CompilerServices;
using AxisSim.Cli.Json;
using AxisSim.Cli.Text;
using AxisSim.Cli.Text.Balance;
using AxisSim.Core.Payloads;
using AxisSim.Core.Sky;
using AxisSim.Core.Studies;
using AxisSim.Plots;
using AxisSim.Plots.Pictures;

namespace AxisSim.Cli.Output;

/// <summary>The files of a balance.</summary>
internal static class BalanceFiles
{
    private const string Outcome = "balance.json";

    // Places of the map: 15 min and 2.5 deg.
    private const int HourSteps = 96;
    private const double DeclinationStep = 2.5;

    /// <summary>So much of the ground is shown below the horizon, deg.</summary>
    private const double GroundDegrees = 10.0;

    /// <summary>Writes the places as settings, the picture, and the document last: where it is, the set is whole and of one run.</summary>
    [MethodImpl(MethodImplOptions.NoInlining)]
    public static void Write(OutputFolder folder, BalanceAnswer answer, Carry? carry, BalanceDocument document)
    {
        folder.Remove(Outcome);
        Carry.Write(folder, CarryText.Balanced, carry);
        MoveFiles.Figure(folder, "balance", BalanceFigure.Create(Picture(answer)));
        folder.Write(Outcome, document.Write);
    }

    /// <summary>What is drawn.</summary>
    public static BalancePicture Picture(BalanceAnswer answer)
    {
        PayloadModel payload = answer.Scenario.Payload!;
        double[] hours = [.. Enumerable.Range(0, HourSteps + 1).Select(i => (24.0 * i / HourSteps) - 12.0)], declinations = Declinations(Units.Degrees(answer.Scenario.LatitudeRadians));
        Counterweight? weight = payload.Counterweight;
        bool moves = weight is not null && answer.Report.Counterweight.Action is CounterweightAction.Move or CounterweightAction.AddMass;
        return new BalancePicture
        {
            Title = $"{answer.Scenario.Name}: balance",
            Sentence = GradeText.Verdict(answer),
            HourAngles = hours,
            Declinations = declinations,
            Axes = [.. answer.Reached.Select(reached => Sky(answer, reached, hours, declinations))],
            Move = [.. BalanceReach.Way(answer.Scenario.Setup).Select(pose => Place(pose, answer.Scenario.LatitudeRadians))],
            Parts = [.. payload.Bodies.Select(Part)],
            Weights = weight is null ? null : Weights(weight, weight.DistanceMetres, $"weights {Say.With(weight.MassKilograms, "kg")}"),
            Advised = moves ? Weights(weight!, answer.Report.Counterweight.DistanceMetres, "where they should be") : null,
            BarMetres = weight is null ? 0.0 : weight.BarLengthMetres > 0.0 ? weight.BarLengthMetres : weight.GreatestDistanceMetres ?? weight.DistanceMetres,
            GreatestMetres = weight?.GreatestDistanceMetres,
        };
    }

    // All that rises, from the elevated pole on, and some of the ground.
    private static double[] Declinations(double latitudeDegrees)
    {
        int steps = (int)Math.Ceiling(Math.Min(180.0, 180.0 - Math.Abs(latitudeDegrees) + GroundDegrees) / DeclinationStep);
        double[] fromPole = [.. Enumerable.Range(0, steps + 1).Select(i => 90.0 - (DeclinationStep * i)).Reverse()];
        return latitudeDegrees >= 0.0 ? fromPole : [.. fromPole.Select(declination => -declination).Reverse()];
    }

    private static SkyImbalance Sky(BalanceAnswer answer, ReachedImbalance reached, double[] hours, double[] declinations)
    {
        double latitude = answer.Scenario.LatitudeRadians;
        double Torque(double hour, double declination)
        {
            // Each place on the usual side of the pier: the telescope west for what is east of the meridian.
            MountPose pose = SkyPose.ToMechanical(hour * Math.PI / 12.0, declination * Math.PI / 180.0, hour < 0.0 ? PierSide.West : PierSide.East, latitude);
            return SkyPose.SineOfAltitude(pose, latitude) >= 0.0 ? Math.Abs(answer.Scenario.Setup.Load.GravityTorque(reached.Axis, pose)) : double.NaN;
        }

        PoseImbalance worst = reached.Worst;
        (double hour, double declination) = Place(worst.Pose, latitude);
        string side = SkyText.Side(SkyPose.ToSky(worst.Pose, latitude).Side);
        return new SkyImbalance(
            $"About the {reached.Axis.Words()}, each place on its usual side of the pier",
            [.. declinations.SelectMany(declination => hours.Select(hour => Torque(hour, declination)))],
            answer.Graded.FirstOrDefault(graded => graded.Axis == reached.Axis)?.HiddenNewtonMetres ?? double.NaN,
            new MapPoint(hour, declination, $"{Units.AxisTorque(worst.NewtonMetres)}, telescope {side}"));
    }

    private static (double HourAngle, double Declination) Place(MountPose pose, double latitude)
    {
        SkyPoint sky = SkyPose.ToSky(pose, latitude);
        return (sky.HourAngleRadians * 12.0 / Math.PI, Units.Degrees(sky.DeclinationRadians));
    }

    private static PayloadPart Part(PayloadBody body)
    {
        double round = body.DiameterMetres, length = body.LengthMetres;
        (double along, double across) = (body.Shape, body.Direction) switch
        {
            (BodyShape.Point, _) => (0.0, 0.0),
            (BodyShape.Box, BodyDirection.Forward) => (body.WidthMetres, length),
            (BodyShape.Box, BodyDirection.Out) => (length, body.WidthMetres),
            (BodyShape.Box, _) => (body.WidthMetres, body.HeightMetres),
            (_, BodyDirection.Forward) => (round, length),
            (_, BodyDirection.Out) => (length, round),
            _ => (round, round),
        };
        return new PayloadPart($"{body.Name} {Say.With(body.MassKilograms, "kg")}", body.OutMetres, body.ForwardMetres, along, across);
    }

    private static PayloadPart Weights(Counterweight weight, double distance, string name) => new(name, -distance, 0.0, weight.LengthMetres, weight.DiameterMetres);
}
