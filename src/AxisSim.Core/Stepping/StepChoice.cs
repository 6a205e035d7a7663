using AxisSim.Core.Drives;
using AxisSim.Core.Dynamics;
using AxisSim.Core.Motion;
using AxisSim.Core.Mount;
using AxisSim.Core.Sky;

namespace AxisSim.Core.Stepping;

/// <summary>The step in use, and why it is shorter than asked for, if it is.</summary>
/// <param name="StepSeconds">Step, s.</param>
/// <param name="Reason">Null when the asked step is used.</param>
/// <param name="Workable">False when even the shortest step is too long for the fastest motion: such a setup is not simulated.</param>
public sealed record StepChoice(double StepSeconds, string? Reason, bool Workable = true)
{
    /// <summary>The step that is used when none is asked for, s.</summary>
    public const double DefaultSeconds = 50e-6;

    /// <summary>Greatest electrical angle that the rotor may turn in a step, rad (the averaging of torque and back-EMF is good to this).</summary>
    public const double GreatestSweepRadians = 0.38;

    /// <summary>The same while the drive microsteps and the supply's voltage clamps it, rad: the clamp's ends fall inside steps, and above this the pull-out torque reads over 1 % low.</summary>
    public const double GreatestClampedSweepRadians = 0.17;

    /// <summary>Greatest angle of the fastest mechanical mode in a step, rad (accuracy; the scheme is stable to 2), and greatest share by which the bus voltage may change.</summary>
    public const double GreatestModeRadians = 0.38;

    /// <summary>Greatest angle of the rotor on the mesh alone in a step, rad: at a low reduction flanks hit the rotor hard, each hit has an error of its own, and the place of rest shows it.</summary>
    public const double GreatestMeshRadians = 0.035;

    private static readonly double[] Steps = [50e-6, 40e-6, 25e-6, 20e-6, 12.5e-6, 10e-6, 8e-6, 5e-6, 4e-6, 2.5e-6, 2e-6, 1.25e-6, 1e-6, 0.5e-6, 0.25e-6, 0.1e-6];

    /// <summary>Chooses the step: the asked one if it is short enough for the speeds and the modes, else the next shorter of a fixed list.</summary>
    /// <param name="askedSeconds">Step asked for, s.</param>
    /// <param name="teeth">Rotor teeth.</param>
    /// <param name="peakSpeedRadiansPerSecond">Greatest speed of the motor, rad/s.</param>
    /// <param name="fastestModeRadiansPerSecond">Fastest swing or decay, rad/s.</param>
    /// <param name="clampedSpeedRadiansPerSecond">Greatest speed at which it microsteps and the voltage may clamp it, rad/s; see <see cref="ClampedSpeed"/>.</param>
    /// <param name="meshRadiansPerSecond">Rotor on the mesh alone, rad/s.</param>
    public static StepChoice For(double askedSeconds, double teeth, double peakSpeedRadiansPerSecond, double fastestModeRadiansPerSecond, double clampedSpeedRadiansPerSecond = 0.0, double meshRadiansPerSecond = 0.0)
    {
        (double Rate, double Most, string Why)[] limits =
        [
            (teeth * peakSpeedRadiansPerSecond, GreatestSweepRadians, "the motor turns {0:0.00} electrical rad in {1:0.##} us; up to {2} is accurate"),
            (teeth * clampedSpeedRadiansPerSecond, GreatestClampedSweepRadians, "microstepping at the limit of the voltage, the motor turns {0:0.00} electrical rad in {1:0.##} us; up to {2} is accurate"),
            (fastestModeRadiansPerSecond, GreatestModeRadians, "the fastest swing, decay or change of the bus voltage ({3:0} rad/s) goes through {0:0.00} rad in {1:0.##} us; up to {2} is accurate"),
            (meshRadiansPerSecond, GreatestMeshRadians, "at this low reduction the rotor on the train ({3:0} rad/s) goes through {0:0.000} rad in {1:0.##} us; up to {2} the place of rest is accurate"),
        ];
        (double Rate, double Most, string Why) hardest = limits.MaxBy(limit => limit.Rate / limit.Most);
        double longest = hardest.Rate > 0.0 ? hardest.Most / hardest.Rate : double.PositiveInfinity;
        if (askedSeconds <= longest)
        {
            return new StepChoice(askedSeconds, null);
        }

        double step = Array.Find(Steps, s => s <= longest && s <= askedSeconds);
        bool workable = step > 0.0;
        return new StepChoice(
            workable ? step : Steps[^1],
            string.Format(System.Globalization.CultureInfo.InvariantCulture, hardest.Why, hardest.Rate * askedSeconds, askedSeconds * 1e6, hardest.Most, hardest.Rate),
            workable);
    }

    /// <summary>Greatest speed up to a peak at which the drive microsteps and its voltage may clamp the current, rad/s; 0 when it never may.</summary>
    /// <remarks>The voltage wanted is at most <c>|R + j Nr w L| I + Km w</c>, at any load angle; a tenth is left for warm windings and a sagging supply.</remarks>
    internal static double ClampedSpeed(Motors.StepperMotor motor, Drives.ChopperDrive drive, double peakSpeed)
    {
        const double Margin = 1.1;
        double speed = Math.Min(peakSpeed, drive.ChangeoverRadiansPerSecond), reactance = motor.RotorTeeth * speed * motor.InductanceHenries;
        double wanted = (Math.Sqrt((motor.ResistanceOhms * motor.ResistanceOhms) + (reactance * reactance)) * drive.SlewCurrentAmperes) + (motor.TorqueConstantNewtonMetresPerAmpere * speed);
        return Margin * wanted > drive.SupplyVolts ? speed : 0.0;
    }

    /// <summary>Chooses the step for one axis of a mount and its move.</summary>
    public static StepChoice For(MountSetup setup, MountAxis axis, double askedSeconds)
    {
        ArgumentNullException.ThrowIfNull(setup);
        return new LaneAxis(setup, axis, new MovePlan(setup), askedSeconds).Choice;
    }

    internal static StepChoice For(double askedSeconds, AxisModel model, AxisParameters parameters, MotorPlan plan)
    {
        double current = Math.Max(model.Drive.SlewCurrentAmperes, Math.Max(model.Drive.HoldingCurrentAmperes, model.Drive.TrackingCurrentAmperes));
        double field = model.Motor.TorqueConstantNewtonMetresPerAmpere * current * Math.Sqrt(2.0) * model.Drive.FullStepCurrentFraction;
        double magnetic = model.Motor.RotorTeeth * (field + (4.0 * model.Motor.DetentTorqueNewtonMetres));
        double stage = parameters.StageMesh.Stiffness;
        double rotorStiffness = magnetic + (parameters.ShaftInertia > 0.0
            ? stage / (parameters.StageRatio * parameters.StageRatio)
            : parameters.Mesh.Stiffness / (parameters.WormRatio * parameters.WormRatio));
        double mode = Math.Sqrt(rotorStiffness / parameters.RotorInertia);
        if (parameters.ShaftInertia > 0.0)
        {
            mode = Math.Max(mode, Math.Sqrt((stage + (parameters.Mesh.Stiffness / (parameters.WormRatio * parameters.WormRatio))) / parameters.ShaftInertia));
        }

        mode = Math.Max(mode, Math.Sqrt((parameters.Mesh.Stiffness + parameters.PayloadStiffness) / parameters.AxisInertia));
        if (parameters.PayloadInertia > 0.0)
        {
            mode = Math.Max(mode, Math.Sqrt(parameters.PayloadStiffness / parameters.PayloadInertia));
        }

        double ratio = parameters.StageRatio * parameters.WormRatio;
        double motorSide = parameters.RotorInertia + (parameters.ShaftInertia / (parameters.StageRatio * parameters.StageRatio));
        double onMesh = Math.Sqrt(parameters.Mesh.Stiffness / motorSide) / ratio;

        // At the voltage limit the rotor swings on its own back-EMF through the inductance; a resistance only slows that down.
        mode = Math.Max(mode, model.Motor.TorqueConstantNewtonMetresPerAmpere / Math.Sqrt(model.Motor.InductanceHenries * parameters.RotorInertia));
        double fastest = Math.Max(mode, Math.Max(Decay(parameters), SupplyLaw.GreatestRate(model.Drive)));
        return For(askedSeconds, model.Motor.RotorTeeth, plan.PeakSpeed, fastest, ClampedSpeed(model.Motor, model.Drive, plan.PeakSpeed), onMesh);
    }

    /// <summary>Fastest decay by viscous damping, 1/s.</summary>
    private static double Decay(AxisParameters p)
    {
        double node = p.ShaftInertia > 0.0 ? p.ShaftInertia : p.RotorInertia;
        double decay = Math.Max((p.RotorViscous + p.PlanDamping) / p.RotorInertia, (p.AxisViscous + p.Mesh.Damping) / p.AxisInertia);
        decay = Math.Max(decay, p.Mesh.Damping / (p.WormRatio * p.WormRatio * node));
        decay = p.ShaftInertia > 0.0 ? Math.Max(decay, p.StageMesh.Damping / p.ShaftInertia) : decay;
        return p.PayloadInertia > 0.0 ? Math.Max(decay, p.PayloadDamping * ((1.0 / p.PayloadInertia) + (1.0 / p.AxisInertia))) : decay;
    }
}
