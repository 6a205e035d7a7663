using System.Runtime.CompilerServices;

namespace AxisSim.Core.Motors;

/// <summary>Decay factors of a phase over one interval: of the current regulator and of the winding itself.</summary>
/// <param name="Regulator"><c>exp(-h/tau)</c>.</param>
/// <param name="RegulatorMean">Mean of that decay over the interval, <c>(1 - exp(-h/tau)) tau/h</c>.</param>
/// <param name="Winding"><c>exp(-h R/L)</c>.</param>
/// <param name="WindingMean">Its mean, <c>(1 - exp(-h R/L)) L/(R h)</c>.</param>
internal readonly record struct PhaseDecay(double Regulator, double RegulatorMean, double Winding, double WindingMean)
{
    public static PhaseDecay Over(double interval, double regulatorSeconds, double windingSeconds)
    {
        (double regulator, double regulatorMean) = Decay(interval / regulatorSeconds);
        (double winding, double windingMean) = Decay(interval / windingSeconds);
        return new PhaseDecay(regulator, regulatorMean, winding, windingMean);
    }

    /// <summary>The rest of this interval after a first part of it: its decay is the quotient, so no exponential is needed.</summary>
    public PhaseDecay After(in PhaseDecay first, double rest, double regulatorSeconds, double windingSeconds)
    {
        (double regulator, double regulatorMean) = Rest(Regulator, first.Regulator, rest / regulatorSeconds);
        (double winding, double windingMean) = Rest(Winding, first.Winding, rest / windingSeconds);
        return new PhaseDecay(regulator, regulatorMean, winding, windingMean);
    }

    // A decay so fast that it underflows has no quotient.
    private static (double End, double Mean) Rest(double whole, double first, double x)
    {
        if (whole < LeastQuotient)
        {
            return Decay(x);
        }

        double end = whole / first;
        return (end, Mean(end, x));
    }

    private const double LeastQuotient = 1e-250;

    // 1 - exp(-x) without cancellation, for an edge may leave a sliver of a step.
    private static double Mean(double end, double x) => x < Sliver ? 1.0 - (0.5 * x) + (x * x / 6.0) : (1.0 - end) / x;

    private const double Sliver = 1e-5;

    private static (double End, double Mean) Decay(double x)
    {
        double end = Math.Exp(-x);
        return (end, Mean(end, x));
    }
}

/// <summary>Current of one phase at the end of an interval, its mean, and whether the supply limited it.</summary>
internal readonly record struct PhaseCurrent(double End, double Mean, bool Saturated);

/// <summary>The differential equation of one phase, <c>L di/dt = v - R i - e</c>, solved exactly over an interval.</summary>
/// <remarks>
/// Regulated: <c>v = clamp(R i + e + (L/tau)(i* - i), -V, +V)</c>. The three linear solutions (regulated, full positive
/// voltage, full negative voltage) bound each other; the current is the regulated one clamped between the other two, and the
/// mean is that of the solution chosen. Where the choice changes inside an interval the error is of second order in it.
/// </remarks>
internal static class PhaseCircuit
{
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static PhaseCurrent Regulated(in PhaseDecay decay, double start, double target, double emf, double conductance, double volts)
    {
        double end = target + ((start - target) * decay.Regulator);
        double high = (volts - emf) * conductance;
        double highEnd = high + ((start - high) * decay.Winding);
        if (end > highEnd)
        {
            return new PhaseCurrent(highEnd, high + ((start - high) * decay.WindingMean), true);
        }

        double low = (-volts - emf) * conductance;
        double lowEnd = low + ((start - low) * decay.Winding);
        if (end < lowEnd)
        {
            return new PhaseCurrent(lowEnd, low + ((start - low) * decay.WindingMean), true);
        }

        return new PhaseCurrent(end, target + ((start - target) * decay.RegulatorMean), false);
    }

    /// <summary>The phase under a given mean voltage.</summary>
    public static PhaseCurrent Driven(in PhaseDecay decay, double start, double emf, double conductance, double volts)
    {
        double rest = (volts - emf) * conductance;
        return new PhaseCurrent(rest + ((start - rest) * decay.Winding), rest + ((start - rest) * decay.WindingMean), false);
    }
}
