using AxisSim.Plots.Drawing;
using OxyPlot.Annotations;

namespace AxisSim.Plots.Moves;

/// <summary>How a load angle is shown: in full steps, a quarter of an electrical turn each.</summary>
/// <remarks>The static torque is greatest one full step from the command and reverses beyond two: a rotor that passes two falls into the next stable place four full steps away.</remarks>
internal static class LoadAngle
{
    /// <summary>Title of the vertical axis of a high panel.</summary>
    public const string Title = "Load angle, full steps";

    /// <summary>Full steps in an electrical radian.</summary>
    public const double FullStepsPerRadian = 2.0 / Math.PI;

    /// <summary>Entry of a legend for the range in which the torque pulls the rotor back.</summary>
    public static LegendEntry Stable { get; } = new("the torque pulls it back", Looks.StableRange);

    private const double MostSteps = 10.0;
    private const double UnstableFromSteps = 2.0;

    /// <summary>The range in which the torque pulls the rotor back.</summary>
    public static RectangleAnnotation Belt() => Marks.Belt(Looks.StableRange, -UnstableFromSteps, UnstableFromSteps);

    /// <summary>A vertical range that holds what is drawn: at least so many full steps either way, and not all of a rotor that has lost sync.</summary>
    public static Span Range(double[] steps, double leastSteps)
    {
        Span reach = Span.Of(steps);
        return new(Math.Clamp(1.1 * reach.From, -MostSteps, -leastSteps), Math.Clamp(1.1 * reach.To, leastSteps, MostSteps));
    }
}
