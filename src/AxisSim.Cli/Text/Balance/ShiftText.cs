using AxisSim.Core.Payloads;
using AxisSim.Core.Studies;

namespace AxisSim.Cli.Text.Balance;

/// <summary>One thing to shift.</summary>
/// <param name="Sentence">What, and how far.</param>
/// <param name="Settings">Settings that try it, each <c>key=value</c>; empty when there is nothing to try.</param>
/// <param name="Note">Why, in a clause to stand beside the settings.</param>
internal sealed record ShiftStep(string Sentence, IReadOnlyList<string> Settings, string Note = "");

/// <summary>What to shift, in the order in which one does it: the tube first, then the counterweight.</summary>
internal static class ShiftText
{
    // Nobody slides a tube more finely than this, m.
    private const double SettingMetres = 5e-4;

    /// <summary>The steps.</summary>
    public static IEnumerable<ShiftStep> Steps(PayloadModel payload, BalanceReport report)
    {
        PayloadShift shift = report.Shift;
        yield return Math.Abs(shift.ForwardMetres) < SettingMetres
            ? new("Leave the tube where it is along its length: it balances.", [])
            : new(
                $"Slide everything on the telescope side {Length(Math.Abs(shift.ForwardMetres))} {(shift.ForwardMetres > 0.0 ? "forward, towards the sky" : "back, away from the sky")}{Moved(payload)}",
                [.. payload.Bodies.Select(body => $"payload.{body.Name}.forward={Millimetres(body.ForwardMetres + shift.ForwardMetres)} mm")],
                $"slid {Length(Math.Abs(shift.ForwardMetres))} {(shift.ForwardMetres > 0.0 ? "forward" : "back")}: balances the tube along its length");
        if (Math.Abs(shift.SideMetres) >= SettingMetres)
        {
            // Side is Out x Forward: with Out up and Forward ahead it points to the left.
            string side = shift.SideMetres > 0.0 ? "left" : "right";
            yield return new(
                $"Shift it {Length(Math.Abs(shift.SideMetres))} to the {side}, as seen from the eyepiece end with the saddle underneath the tube, or hang a weight of {Say.With(payload.Bodies.Sum(body => body.MassKilograms) * Math.Abs(shift.SideMetres), "kg m")} (mass times distance from the middle) on that side. Without this {Units.AxisTorque(shift.RemainderWithoutSideNewtonMetres)} remain about the declination axis.",
                [.. payload.Bodies.Select(body => $"payload.{body.Name}.side={Millimetres(body.SideMetres + shift.SideMetres)} mm")],
                $"shifted {Length(Math.Abs(shift.SideMetres))} to the {side}: balances it across");
        }

        yield return Weight(payload.Counterweight, report.Counterweight);
    }

    private static string Moved(PayloadModel payload) =>
        payload.Bodies.Count == 1 ? "." : $": all {Say.Count(payload.Bodies.Count)} bodies by the same length, most easily by moving the plate in its saddle.";

    private static ShiftStep Weight(Counterweight? weight, CounterweightAdvice advice) => advice.Action switch
    {
        CounterweightAction.Keep => new("Leave the counterweight: it is where it should be.", []),
        CounterweightAction.Move when weight is not null => new(
            $"Move the counterweight from {Length(weight.DistanceMetres)} to {Length(advice.DistanceMetres)} from the polar axis, {Length(Math.Abs(advice.DistanceMetres - weight.DistanceMetres))} {(advice.DistanceMetres > weight.DistanceMetres ? "further out" : "further in")}.",
            [$"counterweight.distance={Say.Number(advice.DistanceMetres, 4)} m"],
            $"balances the polar axis; before: {Length(weight.DistanceMetres)}"),
        CounterweightAction.AddMass when weight is not null => new(
            $"The counterweight is too light for its bar: put {Say.With(advice.MassKilograms, "kg", 4)} instead of {Say.With(weight.MassKilograms, "kg")} at the end of the bar, {Length(advice.DistanceMetres)} from the polar axis. Moved there as it is, {Units.AxisTorque(advice.ReachableRemainderNewtonMetres)} would remain.",
            [$"counterweight.mass={Say.Number(advice.MassKilograms, 4)} kg", $"counterweight.distance={Say.Number(advice.DistanceMetres, 4)} m"],
            $"balances the polar axis; before: {Say.With(weight.MassKilograms, "kg")} at {Length(weight.DistanceMetres)}"),
        CounterweightAction.Remove => new("Take the weights off: bar and weights outweigh the telescope side even without them.", []),
        _ => new($"Provide a counterweight of {Say.Number(advice.NeededMomentKilogramMetres)} kg m (mass times distance from the polar axis), such as {Say.With(advice.NeededMomentKilogramMetres / 0.4, "kg")} at 0.4 m.", []),
    };

    private static string Length(double metres) => metres < 0.1 ? Say.With(metres * 1000.0, "mm") : Say.With(metres, "m", 4);

    // To a tenth: finer than any hand, and coarse enough to type.
    private static string Millimetres(double metres) => Say.Number(Math.Round(metres * 1000.0, 1), 5);
}
