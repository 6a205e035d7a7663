using AxisSim.Core.Outcomes;
using AxisSim.Core.Studies;

namespace AxisSim.Cli.Text.Balance;

/// <summary>How much an imbalance matters, in words, with the thresholds and where they come from.</summary>
internal static class GradeText
{
    /// <summary>The verdict of both axes.</summary>
    public static string Verdict(BalanceAnswer answer)
    {
        string most = $"by up to {Units.AxisTorque(answer.Reached[0].Worst.NewtonMetres)} about the polar axis and {Units.AxisTorque(answer.Reached[1].Worst.NewtonMetres)} about the declination axis";
        return answer.Grade switch
        {
            ImbalanceGrade.CannotBeFelt => $"BALANCED: out {most}, which cannot be felt.",
            ImbalanceGrade.Harmless => $"NEARLY BALANCED: out {most}: feelable, harmless.",
            _ => $"OUT OF BALANCE: {most}.{string.Concat(answer.Graded.Where(graded => graded.Grade >= ImbalanceGrade.TakesTorque).Select(graded => $" The {graded.Axis.Words()}: {Words(graded)}."))}",
        };
    }

    /// <summary>A grade in a few words.</summary>
    public static string Words(GradedImbalance graded) => graded.Grade switch
    {
        ImbalanceGrade.CannotBeFelt => "cannot be felt",
        ImbalanceGrade.Harmless => "feelable, harmless",
        ImbalanceGrade.TooMuch when graded.NewtonMetres > graded.ClutchNewtonMetres => "more than the clutch holds while the axis speeds up",
        ImbalanceGrade.TooMuch => "more than the motor lifts at the slew rate",
        _ => $"takes {Units.Percent(graded.TorqueShare)} of the torque that the motor has at the slew rate",
    };

    /// <summary>The grade of an axis with its thresholds.</summary>
    public static string Row(GradedImbalance graded)
    {
        string harmless = graded.HarmlessNewtonMetres > 0.0
            ? $"up to {Units.AxisTorque(graded.HarmlessNewtonMetres)} motor and clutch keep a load factor of {Say.Number(LoadFactor.Usual)}"
            : $"motor or clutch lack a load factor of {Say.Number(LoadFactor.Usual)} even without it";
        string lift = graded.LiftNewtonMetres > 0.0 ? $"the motor lifts {Units.AxisTorque(graded.LiftNewtonMetres)} at most" : "the motor has nothing left to lift any with";
        string clutch = double.IsFinite(graded.ClutchNewtonMetres) ? $", the clutch holds {Units.AxisTorque(Math.Max(0.0, graded.ClutchNewtonMetres))}" : "";
        return $"{Units.AxisTorque(graded.NewtonMetres)}: {Words(graded)}. Friction hides up to {Units.AxisTorque(graded.HiddenNewtonMetres)}; {harmless}; {lift}{clutch}";
    }

    /// <summary>Where the thresholds come from.</summary>
    public const string Basis =
        "Friction: the breakaway torque of the bearings, as at an open clutch. Motor and clutch: by closed forms at full acceleration up to the slew rate, the hardest moment of a slew; a load factor of 1.3 is common practice. axissim simulate runs the move.";
}
