using AxisSim.Core.Batches;
using AxisSim.Core.Envelopes;
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

    public ReductionWork(MountSetup setup, MountAxis axis, double totalRatio, double marginShare)
    {
        Axis = axis;
        Setup = ReductionTrain.With(setup, axis, totalRatio);
        Loaded = Arrival.Loaded(Setup, axis, 1.0 / (1.0 - marginShare));
        Facts = ReductionLaw.At(setup, axis, totalRatio, marginShare);
        Gain = totalRatio * ReductionMatch.Of(setup, axis, marginShare).DrivingEfficiency;
        (double top, _limit) = EnvelopeStudy.Top(Setup, axis, Model.Motion.RampInUseSeconds);

        // Where the closed form sees no rate at all, the simulation is asked from a tenth of the file's own on: it may know better.
        double guess = Facts.RateRadiansPerSecond > 0.0 ? Facts.RateRadiansPerSecond : 0.1 * Model.Motion.SlewRateRadiansPerSecond;
        Rates = new EdgeScan(guess, top);
        Accelerations = new EdgeScan(0.0, 0.0);
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

        AccelerationRate = Math.Max(Math.Min(Model.Motion.SlewRateRadiansPerSecond, ReductionStudy.AccelerationRateShare * safe), Model.Motion.StartRateRadiansPerSecond);
        double formula = Facts.AccelerationRadiansPerSecondSquared;
        Accelerations = new EdgeScan(0.5 * formula, 3.0 * formula);
    }
}
