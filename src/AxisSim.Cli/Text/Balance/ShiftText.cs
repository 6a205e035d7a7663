using AxisSim.Core.Payloads;
using AxisSim.Core.Studies;

namespace AxisSim.Cli.Text.Balance;

/// <summary>What to shift, in the order in which one does it: the tube first, then the counterweight.</summary>
internal static class ShiftText
{
    // Nobody slides a tube more finely than this, m.
    private const double SettingMetres = 5e-4;

    /// <summary>The steps.</summary>
    public static IEnumerable<string> Steps(PayloadModel payload, BalanceReport report)
    {
        PayloadShift shift = report.Shift;
        yield return Math.Abs(shift.ForwardMetres) < SettingMetres
            ? "Leave the tube where it is along its length: it balances."
            : $"Slide everything on the telescope side {Length(Math.Abs(shift.ForwardMetres))} {(shift.ForwardMetres > 0.0 ? "forward, towards the sky" : "back, away from the sky")}" + Moved(payload);
        if (Math.Abs(shift.SideMetres) >= SettingMetres)
        {
            yield return $"Shift it {Length(Math.Abs(shift.SideMetres))} to the side, {(shift.SideMetres > 0.0 ? "towards" : "away from")} the positive side of the tube frame (out x forward), or hang a weight there. Without this {Units.AxisTorque(shift.RemainderWithoutSideNewtonMetres)} remain about the declination axis.";
        }

        yield return Weight(payload.Counterweight, report.Counterweight);
    }

    private static string Moved(PayloadModel payload) =>
        payload.Bodies.Count == 1 ? " (one body)." : $": all {Say.Count(payload.Bodies.Count)} bodies by the same length, most easily by moving the plate in its saddle.";

    private static string Weight(Counterweight? weight, CounterweightAdvice advice) => advice.Action switch
    {
        CounterweightAction.Keep => "Leave the counterweight: it is where it should be.",
        CounterweightAction.Move when weight is not null =>
            $"Move the counterweight from {Length(weight.DistanceMetres)} to {Length(advice.DistanceMetres)} from the polar axis, {Length(Math.Abs(advice.DistanceMetres - weight.DistanceMetres))} {(advice.DistanceMetres > weight.DistanceMetres ? "further out" : "further in")}. To try it: --set \"counterweight.distance={Say.Number(advice.DistanceMetres, 4)} m\"",
        CounterweightAction.AddMass when weight is not null =>
            $"The counterweight is too light for its bar: put {Say.With(advice.MassKilograms, "kg")} instead of {Say.With(weight.MassKilograms, "kg")} at the end of the bar, {Length(advice.DistanceMetres)} from the polar axis. Moved there as it is, {Units.AxisTorque(advice.ReachableRemainderNewtonMetres)} would remain.",
        CounterweightAction.Remove => "Take the weights off: bar and weights outweigh the telescope side even without them.",
        _ => $"Provide a counterweight of {Say.Number(advice.NeededMomentKilogramMetres)} kg m (mass times distance from the polar axis), such as {Say.With(advice.NeededMomentKilogramMetres / 0.4, "kg")} at 0.4 m.",
    };

    private static string Length(double metres) => metres < 0.1 ? Say.With(metres * 1000.0, "mm") : Say.With(metres, "m", 4);
}
