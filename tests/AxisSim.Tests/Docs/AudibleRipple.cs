using AxisSim.Core.Outcomes;
using MathNet.Numerics;
using MathNet.Numerics.IntegralTransforms;

namespace AxisSim.Tests.Docs;

/// <summary>Torque ripple of the motor in the audible band, 100 Hz to 5 kHz.</summary>
internal static class AudibleRipple
{
    public const double LowHertz = 100.0;
    public const double HighHertz = 5000.0;

    /// <summary>Samples of the window: 6.6 s at 50 us, so that lines of the step rate stand clear of each other.</summary>
    private const int Samples = 1 << 17;

    /// <summary>Root mean square of the torque within the band, N m, from every step over a window that begins at a time.</summary>
    public static double RootMeanSquare(StepRows steps, double stepSeconds, double fromSeconds)
    {
        int start = (int)Math.Round(fromSeconds / stepSeconds);
        double[] window = Window.HannPeriodic(Samples);
        IReadOnlyList<double> torque = steps[TraceQuantity.MotorTorqueNewtonMetres];
        double mean = torque.Skip(start).Take(Samples).Average();
        double[] data = new double[Samples + 2];
        for (int i = 0; i < Samples; i++)
        {
            data[i] = window[i] * (torque[start + i] - mean);
        }

        Fourier.ForwardReal(data, Samples, FourierOptions.Matlab);
        double power = 0.0;
        for (int k = 1; k <= Samples / 2; k++)
        {
            double hertz = k / (Samples * stepSeconds);
            if (hertz is >= LowHertz and <= HighHertz)
            {
                power += 2.0 * ((data[2 * k] * data[2 * k]) + (data[(2 * k) + 1] * data[(2 * k) + 1]));
            }
        }

        // Parseval; the Hann window keeps 3/8 of the power.
        return Math.Sqrt(power / (0.375 * Samples * (double)Samples));
    }
}
