using AxisSim.Core.Batches;
using AxisSim.Core.Envelopes;
using AxisSim.Core.Mount;
using AxisSim.Core.Sky;

namespace AxisSim.Core.Recommendations;

/// <summary>What stands against a greater slew rate with the recommended ramp, current and changeover.</summary>
public enum BindingConstraint
{
    /// <summary>The supply voltage: with ten times of it the next rate arrives.</summary>
    SupplyVoltage,

    /// <summary>The torque of the motor at this current.</summary>
    MotorTorque,

    /// <summary>A resonance: rates above arrive again, or the failure goes away without full-stepping or with damping.</summary>
    Resonance,

    /// <summary>The clutch.</summary>
    Clutch,

    /// <summary>The greatest pulse rate of the controller.</summary>
    PulseRate,

    /// <summary>The move: both ramps together take all of it.</summary>
    MoveLength,

    /// <summary>The motor has hardly any torque left at greater speed.</summary>
    MotorSpeed,

    /// <summary>The temperature of the winding.</summary>
    Temperature,
}

/// <summary>The binding constraint with its figures.</summary>
/// <param name="Constraint">What it is.</param>
/// <param name="Greatest">The greatest rate with the recommended ramp, current and changeover, at the margin.</param>
/// <param name="VoltageLimitsFromRadiansPerSecond">Axis rate above which the supply cannot drive the full current, by the closed form, rad/s.</param>
public sealed record Binding(BindingConstraint Constraint, SafeRate Greatest, double VoltageLimitsFromRadiansPerSecond)
{
    private const double Ample = 10.0;

    /// <summary>Names it by running the first failing rate again with one thing changed.</summary>
    internal static Binding Of(BatchAsker ask, MountSetup setup, AxisSettings settings, SafeRate greatest, IReadOnlyList<LoadCase> loads, double margin)
    {
        MountAxis axis = loads[0].Move.Axis;
        AxisModel model = settings.Apply(setup, axis).Axis(axis);
        double from = SettingsGrid.VoltageLimitedSpeed(model) / model.Train.TotalRatio;
        BindingConstraint? known = greatest.Limit switch
        {
            EnvelopeLimit.PulseRate => BindingConstraint.PulseRate,
            EnvelopeLimit.MoveLength => BindingConstraint.MoveLength,
            EnvelopeLimit.MotorSpeed => BindingConstraint.MotorSpeed,
            _ => greatest.Failure == BatchEnd.ClutchSlips ? BindingConstraint.Clutch : greatest.Island is not null ? BindingConstraint.Resonance : null,
        };
        if (known is { } constraint)
        {
            return new Binding(constraint, greatest, from);
        }

        AxisSettings failing = settings with { SlewRateRadiansPerSecond = greatest.FirstFailingRadiansPerSecond };
        double probe = RateFinder.ProbeRadians(failing);
        MountSetup ample = setup.With(axis, setup.Axis(axis) with { Drive = setup.Axis(axis).Drive with { SupplyVolts = Ample * setup.Axis(axis).Drive.SupplyVolts, BrakeLimitVolts = double.PositiveInfinity, SupplyResistanceOhms = 0.0 } });
        AxisSettings micro = failing with { ChangeoverRadiansPerSecond = double.PositiveInfinity };
        BatchResult[] results = ask.Ask([.. loads.Select(load => load.With(ample, failing, margin, probe)), .. loads.Select(load => load.With(setup, micro, margin, probe))]);
        bool voltage = results.Take(loads.Count).All(result => result.End == BatchEnd.Arrives);
        bool stepping = double.IsFinite(settings.ChangeoverRadiansPerSecond) && results.Skip(loads.Count).All(result => result.End == BatchEnd.Arrives);
        return new Binding(stepping ? BindingConstraint.Resonance : voltage ? BindingConstraint.SupplyVoltage : BindingConstraint.MotorTorque, greatest, from);
    }
}
