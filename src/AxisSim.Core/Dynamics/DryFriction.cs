using System.Runtime.CompilerServices;

namespace AxisSim.Core.Dynamics;

/// <summary>Dry friction over a step: it can stop a motion but not reverse it.</summary>
/// <remarks>
/// All arguments are changes of speed over one step (rad/s). Where the speed passes zero inside the step, the step is cut there: the body rests if the push lies
/// within the friction (true stick, no creep), else it goes on the other way with that side's friction for the rest of the step. Without the cut each
/// reversal would cost an error of first order. Levels may differ between the two directions.
/// </remarks>
internal static class DryFriction
{
    /// <summary>Speed after the step.</summary>
    /// <param name="speed">Speed before it.</param>
    /// <param name="push">Change of speed by all but dry friction.</param>
    /// <param name="resistPositive">Change of speed by friction in motion to the positive side.</param>
    /// <param name="resistNegative">The same to the negative side.</param>
    /// <param name="overrun">
    /// What two half drifts, one at each speed, would count too much where the step is cut, as a speed: half of it times the step is to be taken off the angle.
    /// </param>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static double Kick(double speed, double push, double resistPositive, double resistNegative, out double overrun)
    {
        double after = speed + push - (speed > 0.0 ? resistPositive : -resistNegative);
        overrun = 0.0;
        return speed * after > 0.0 ? after : Cut(speed, after, push, resistPositive, resistNegative, out overrun);
    }

    private static double Cut(double speed, double after, double push, double resistPositive, double resistNegative, out double overrun)
    {
        double rest = push > resistPositive ? push - resistPositive : push < -resistNegative ? push + resistNegative : 0.0;
        if (speed == 0.0)
        {
            overrun = 0.0;
            return rest;
        }

        double cut = speed / (speed - after);
        double end = (1.0 - cut) * rest;
        overrun = ((1.0 - cut) * speed) + (cut * end);
        return end;
    }
}
