using AxisSim.Core.Drives;
using AxisSim.Core.Mount;

namespace AxisSim.Files.Scenarios;

/// <summary>The model of one axis from values.</summary>
internal static class AxisBinding
{
    /// <summary>The axis; notes, where they are wanted, say what was made of its figures.</summary>
    public static AxisModel Bind(ValueSet values, string axis, List<string>? notes)
    {
        AxisModel model = new()
        {
            Motor = MotorBinding.Bind(values, axis, notes),
            Drive = Drive(values, axis),
            Train = TrainBinding.Bind(values, axis),
            Bearings = Bearings(values, axis),
            Flexible = !values.Document.Mentions($"{axis}.flexible") ? null : new FlexiblePayload
            {
                FrequencyHertz = values.Number($"{axis}.flexible.frequency"),
                DampingRatio = values.Number($"{axis}.flexible.damping_ratio"),
                InertiaShare = values.Number($"{axis}.flexible.share"),
            },
            Motion = Motion(values, axis),
            EncoderCounts = values.Number($"{axis}.axis.encoder_counts"),
        };
        if (notes is not null)
        {
            AxisNotes.Add(values, axis, model, notes);
        }

        return model;
    }

    private static ChopperDrive Drive(ValueSet values, string axis)
    {
        double Number(string name) => values.Number($"{axis}.drive.{name}");
        return new ChopperDrive
        {
            SupplyVolts = Number("supply_voltage"),
            SupplyResistanceOhms = Number("supply_resistance"),
            BusCapacitanceFarads = Number("bus_capacitance"),
            BrakeLimitVolts = values.Maybe($"{axis}.drive.brake_limit") ?? double.PositiveInfinity,
            SlewCurrentAmperes = Number("slew_current"),
            TrackingCurrentAmperes = Number("tracking_current"),
            HoldingCurrentAmperes = Number("holding_current"),
            CurrentFallDelaySeconds = Number("current_fall_delay"),
            MicrostepsPerFullStep = (int)Number("microsteps"),
            ChangeoverRadiansPerSecond = Rates.AtMotor(values, axis, $"{axis}.drive.changeover"),
            FullStepCurrentFraction = Number("full_step_current"),
            RegulatorSeconds = Number("regulator_time"),
            GivenDampingNewtonMetreSecondsPerRadian = values.Maybe($"{axis}.drive.damping"),
            DampingShare = Number("damping_share"),
            MaximumPulseRateHertz = values.Maybe($"{axis}.drive.max_pulse_rate") ?? double.PositiveInfinity,
        };
    }

    private static AxisBearings Bearings(ValueSet values, string axis)
    {
        double running = values.Number($"{axis}.axis.friction");
        return new AxisBearings
        {
            CoulombNewtonMetres = running,
            BreakawayNewtonMetres = values.Maybe($"{axis}.axis.breakaway") ?? running,
            ViscousNewtonMetreSecondsPerRadian = values.Number($"{axis}.axis.viscous"),
        };
    }

    private static AxisMotion Motion(ValueSet values, string axis) => new()
    {
        SlewRateRadiansPerSecond = values.Number($"{axis}.motion.slew_rate"),
        Ramp = values.Maybe($"{axis}.motion.acceleration") is { } acceleration ? Ramp.OfAcceleration(acceleration) : Ramp.OfSeconds(values.Number($"{axis}.motion.ramp_time")),
        Shape = values.Text($"{axis}.motion.shape") == "s-curve" ? RampShape.SCurve : RampShape.Trapezoid,
        JerkShare = values.Number($"{axis}.motion.jerk_share"),
        StartRateRadiansPerSecond = Rates.AtAxis(values, axis, $"{axis}.motion.start_rate"),
    };
}
