using System.Runtime.CompilerServices;

namespace AxisSim.Core.Dynamics;

/// <summary>A small disturbance at the rotor: pulses of 1 ms every 20 ms, alternating in sign, until an end time.</summary>
/// <remarks>The torque of a step is the exact mean over it. Amplitude 1 % of the holding torque; its sign can be mirrored.</remarks>
internal readonly record struct SyncProbe(double AmplitudeNewtonMetres, double EndSeconds)
{
    public const double PeriodSeconds = 0.020;
    public const double PulseSeconds = 0.001;
    public const double HoldingTorqueShare = 0.01;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public double Mean(double startSeconds, double stepSeconds) =>
        AmplitudeNewtonMetres == 0.0 || startSeconds >= EndSeconds || IsBetweenPulses(startSeconds, stepSeconds)
            ? 0.0
            : AmplitudeNewtonMetres * (Impulse(startSeconds + stepSeconds) - Impulse(startSeconds)) / stepSeconds;

    // Most steps are: the two impulses would be the same.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static bool IsBetweenPulses(double startSeconds, double stepSeconds)
    {
        double inside = startSeconds - (Math.Floor(startSeconds * (1.0 / PeriodSeconds)) * PeriodSeconds);
        return inside > PulseSeconds + Slack && inside + stepSeconds < PeriodSeconds - Slack;
    }

    private const double Slack = 1e-9;

    /// <summary>Impulse of unit pulses since time 0, s.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static double Impulse(double seconds)
    {
        double index = Math.Floor(seconds / PeriodSeconds);
        double inside = Math.Min(seconds - (index * PeriodSeconds), PulseSeconds);
        bool odd = ((long)index & 1) != 0;
        return odd ? PulseSeconds - inside : inside;
    }
}
