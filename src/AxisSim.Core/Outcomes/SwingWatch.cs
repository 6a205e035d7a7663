using System.Runtime.CompilerServices;
using AxisSim.Core.Drives;

namespace AxisSim.Core.Outcomes;

/// <summary>Watches how far the rotor swings from its field, as a share of what the field holds (<see cref="RotorSwing"/>).</summary>
/// <remarks>A step costs some operations: of each short stretch the least and the greatest angle are weighed, for a swing turns round no more than once in it.</remarks>
internal sealed class SwingWatch
{
    /// <summary>Stretches of a swing of the rotor.</summary>
    private const double StretchesOfSwing = 8.0;

    private readonly Func<double, double, bool, double> _weigh;
    private double _share = double.NegativeInfinity;
    private readonly double _microsteps;
    private readonly double _follow;
    private readonly int _length;
    private double _jump;
    private int _steps;
    private (double Angle, double Seconds, bool FullStepping) _least;
    private (double Angle, double Seconds, bool FullStepping) _greatest;

    /// <summary>A watch over a run that has not begun.</summary>
    /// <param name="drive">The drive.</param>
    /// <param name="swingHertz">Frequency of the rotor on its field, Hz.</param>
    /// <param name="stepSeconds">Step of the run, s.</param>
    /// <param name="weigh">What an angle (rotor less plan and less the mean jump of the field, electrical rad) at a time (s) in a mode is as a share of what the field holds; not a number where it holds nothing.</param>
    public SwingWatch(ChopperDrive drive, double swingHertz, double stepSeconds, Func<double, double, bool, double> weigh)
    {
        _weigh = weigh;
        _microsteps = drive.MicrostepsPerFullStep;
        _follow = 1.0 - Math.Exp(-2.0 * Math.PI * swingHertz * stepSeconds);
        _length = (int)Math.Clamp(1.0 / (StretchesOfSwing * swingHertz * stepSeconds), 1.0, 1e6);
        Begin();
    }

    /// <summary>Angle, time and mode of the greatest share so far; null before the first stretch is over.</summary>
    public (double Angle, double Seconds, bool FullStepping)? Greatest { get; private set; }

    /// <summary>Takes a step.</summary>
    /// <param name="seconds">Its end, s.</param>
    /// <param name="loadAngle">Load angle there, electrical rad.</param>
    /// <param name="planFullSteps">Plan there, in full steps.</param>
    /// <param name="fullStepping">Whether the drive is full-stepping.</param>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public void See(double seconds, double loadAngle, double planFullSteps, bool fullStepping)
    {
        double field = fullStepping ? Math.Floor(planFullSteps) + 0.5 : Math.Round(planFullSteps * _microsteps) / _microsteps;
        _jump += _follow * ((0.5 * Math.PI * (field - planFullSteps)) - _jump);
        double angle = loadAngle - _jump;
        if (angle < _least.Angle)
        {
            _least = (angle, seconds, fullStepping);
        }

        if (angle > _greatest.Angle)
        {
            _greatest = (angle, seconds, fullStepping);
        }

        if (++_steps == _length)
        {
            Weigh();
        }
    }

    private void Weigh()
    {
        Take(_least);
        Take(_greatest);
        Begin();
    }

    private void Take((double Angle, double Seconds, bool FullStepping) at)
    {
        if (double.IsFinite(at.Angle) && _weigh(at.Angle, at.Seconds, at.FullStepping) is var share && share > _share)
        {
            (_share, Greatest) = (share, at);
        }
    }

    private void Begin() => (_steps, _least.Angle, _greatest.Angle) = (0, double.PositiveInfinity, double.NegativeInfinity);
}
