using AxisSim.Core.Mount;
using AxisSim.Report.Text;

namespace AxisSim.Report.Sheets;

/// <summary>What to check before there is power, in the order that safety asks.</summary>
internal static class CheckText
{
    /// <summary>Lever at which a clutch is tried with a hand or a spring scale, m.</summary>
    private const double LeverMetres = 0.5;

    /// <summary>The checks.</summary>
    public static IReadOnlyList<string> Of(SheetInput input, IReadOnlyList<string> names)
    {
        MoveSettings move = input.Setup.Move;
        return
        [
            "Supply off and unplugged. Nobody and nothing under tube and weights.",
            "Payload, counterweight and the stop at the bar's end secured; every bolt tight.",
            "Balance both axes with the clutches open, all cameras and covers on, one hand on the tube.",
            "Clutches closed: " + Grip(input.Axes, names),
            $"Turn {(input.Axes.Count > 1 ? "both axes" : "the axis")} by hand through the whole range and beyond: cables stay slack, pier and tripod stay clear. The move: {SkyText.Way(move, input.LatitudeRadians)}.",
            "Stops in place; limits and a parking place entered in the controller.",
            $"Measure the supply before it is connected: {Volts(input.Axes)}, polarity right, fuse in. Never plug or unplug a motor under power.",
            "Enter currents and microsteps first, then the rest. Know where the switch is: one hand stays on it.",
        ];
    }

    private static string Grip(IReadOnlyList<SheetAxis> axes, IReadOnlyList<string> names)
    {
        string[] known =
        [
            .. axes.Zip(names).Where(pair => double.IsFinite(pair.First.Model.Train.ClutchNewtonMetres))
                .GroupBy(pair => pair.First.Model.Train.ClutchNewtonMetres, pair => pair.Second)
                .Select(alike => $"{string.Join(" and ", alike.Select(name => char.ToLowerInvariant(name[0]) + name[1..]))} at {Say.With(alike.Key, "N m")}, which is {Say.With(alike.Key / LeverMetres, "N")} on a lever of {Say.With(LeverMetres, "m")}"),
        ];
        return known.Length > 0
            ? $"tried with a spring scale they give way as simulated, {string.Join("; ", known)}."
            : "they must hold the tube in every pose, yet give way before something breaks.";
    }

    private static string Volts(IReadOnlyList<SheetAxis> axes) =>
        string.Join(" and ", axes.Select(axis => Say.With(axis.Model.Drive.SupplyVolts, "V", 4)).Distinct());
}
