using System.Runtime.CompilerServices;

namespace AxisSim.Core.Dynamics;

/// <summary>Dry friction as an impulse that can stop a motion but not reverse it.</summary>
/// <remarks>
/// All arguments are changes of speed over one step (rad/s). The speed reaches zero and no further, so a body that sticks is truly at rest
/// (a friction smoothed near zero speed would creep). Levels may differ between the two directions.
/// </remarks>
internal static class DryFriction
{
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static double Kick(double speed, double push, double resistPositive, double resistNegative)
    {
        double free = speed + push;
        double positive = free - resistPositive;
        double negative = free + resistNegative;
        return positive > 0.0 ? positive : negative < 0.0 ? negative : 0.0;
    }
}
