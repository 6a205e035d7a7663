using AxisSim.Core.Batches;
using AxisSim.Core.Envelopes;
using AxisSim.Core.Gearing;
using AxisSim.Core.Motion;
using AxisSim.Core.Sky;
using AxisSim.Core.Studies;

namespace AxisSim.Core.Reductions;

/// <summary>What is known so far of one reduction.</summary>
internal sealed class ReductionWork
{
    private readonly Dictionary<double, BatchEnd> _rateEnds = [];
    private readonly Dictionary<double, BatchEnd> _accelerationEnds = [];
    private readonly EnvelopeLimit _limit;

    public ReductionWork(MountSetup setup, MountAxis axis, ReductionLaw law, double totalRatio, double marginShare)
    {
        Axis = axis;
        Setup = ReductionTrain.With(setup, axis, totalRatio);
        Loaded = Arrival.Loaded(Setup, axis, 1.0 / (1.0 - marginShare));
        Facts = law.At(totalRatio);
        Gain = totalRatio * law.Match.DrivingEfficiency;
        (double top, _limit) = EnvelopeStudy.Top(Setup, axis, Model.Motion.RampInUseSeconds);

        // Where the closed form sees no rate at all, the simulation is asked about the file's own: it may know better.
        double own = Model.Motion.SlewRateRadiansPerSecond;
        double guess = Facts.RateRadiansPerSecond > 0.0 ? Facts.RateRadiansPerSecond : own;
        Rates = new EdgeScan(Math.Max(ReductionStudy.LeastRateShare * own, Model.Motion.StartRateRadiansPerSecond), guess, top);
        Accelerations = new EdgeScan(0.0, 0.0, 0.0);
    }

    public MountAxis Axis { get; }

    /// <summary>The scenario at this reduction.</summary>
    public MountSetup Setup { get; }

    /// <summary>The same with the load that stands for the margin.</summary>
    public MountSetup Loaded { get; }

    public ReductionFacts Facts { get; }

    /// <summary>Axis torque per motor torque when driving.</summary>
    public double Gain { get; }

    public AxisModel Model => Setup.Axis(Axis);

    public EdgeScan Rates { get; }

    public EdgeScan Accelerations { get; private set; }

    public double AccelerationRate { get; private set; } = double.NaN;

    public ReductionBound Bound { get; set; }

    public TorqueShares? Shares { get; set; }

    public BatchEnd? RateEnd => Rates.FirstBad is { } bad ? _rateEnds[bad] : null;

    public BatchEnd? AccelerationEnd => Accelerations.FirstBad is { } bad ? _accelerationEnds[bad] : null;

    /// <summary>What ends the search when no rate fails.</summary>
    public ReductionBound Top => _limit switch { EnvelopeLimit.PulseRate => ReductionBound.PulseRate, EnvelopeLimit.MoveLength => ReductionBound.MoveLength, _ => ReductionBound.SupplyVoltage };

    public void TakeRate(double rate, BatchEnd end)
    {
        _rateEnds[rate] = end;
        Rates.Take(rate, end == BatchEnd.Arrives);
    }

    public void TakeAcceleration(double acceleration, BatchEnd end)
    {
        _accelerationEnds[acceleration] = end;
        Accelerations.Take(acceleration, end == BatchEnd.Arrives);
    }

    /// <summary>The loaded setup at a slew rate, with the scenario's ramp time.</summary>
    public MountSetup AtRate(double rate) => EnvelopeStudy.With(Loaded, Axis, Model.Motion.RampInUseSeconds, rate);

    /// <summary>The loaded setup with a greatest acceleration.</summary>
    public MountSetup AtAcceleration(double acceleration)
    {
        AxisModel model = Loaded.Axis(Axis);
        AxisMotion motion = model.Motion with { SlewRateRadiansPerSecond = AccelerationRate, RampSeconds = null, AccelerationRadiansPerSecondSquared = acceleration };
        return Loaded.With(Axis, model with { Motion = motion });
    }

    /// <summary>Puts the search of accelerations together, once the greatest rate is known.</summary>
    public void PrepareAccelerations()
    {
        if (Rates.LastGood is not { } safe)
        {
            return;
        }

        AxisMotion motion = Model.Motion;
        double most = Math.Min(motion.SlewRateRadiansPerSecond, ReductionStudy.AccelerationRateShare * Facts.RateRadiansPerSecond);
        AccelerationRate = Math.Max(Rates.FirstBad is null ? most : Math.Min(most, safe), motion.StartRateRadiansPerSecond);
        double top = (motion with { SlewRateRadiansPerSecond = AccelerationRate, RampSeconds = SwingSeconds, AccelerationRadiansPerSecondSquared = null }).PeakAcceleration;
        Accelerations = new EdgeScan(0.0, Math.Min(0.8 * Facts.AccelerationRadiansPerSecondSquared, top), top);
    }

    /// <summary>One swing of the axis on the stiffness of its train, s: a shorter ramp is a jolt that the train takes up, and no acceleration of the axis.</summary>
    private double SwingSeconds => 2.0 * Math.PI * Math.Sqrt(Setup.Load.Inertia(Axis, Setup.Move.Start.DeclinationRadians) / Model.Train.StiffnessNewtonMetresPerRadian);
}
