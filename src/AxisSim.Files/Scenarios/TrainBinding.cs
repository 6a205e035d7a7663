using AxisSim.Core.Gearing;

namespace AxisSim.Files.Scenarios;

/// <summary>The transmission of one axis from values.</summary>
internal static class TrainBinding
{
    /// <summary>The whole train.</summary>
    public static GearTrain Bind(ValueSet values, string axis) => new()
    {
        Stages = [.. values.Document.ItemsOf($"{axis}.stages").Select(item => Stage(values, $"{axis}.stages.{item}"))],
        Worm = Worm(values, $"{axis}.worm"),
        BacklashRadians = values.Number($"{axis}.axis.backlash"),
        StiffnessNewtonMetresPerRadian = values.Number($"{axis}.axis.stiffness"),
        DampingRatio = values.Number($"{axis}.axis.damping_ratio"),
        ClutchNewtonMetres = values.Maybe($"{axis}.clutch.slip_torque") ?? double.PositiveInfinity,
    };

    private static GearStage Stage(ValueSet values, string stage)
    {
        Value ratio = values[$"{stage}.ratio"];
        return new GearStage
        {
            Name = values.Text($"{stage}.name"),
            DrivenTeeth = ratio.Number,
            DrivingTeeth = ratio.Second,
            Efficiency = values.Number($"{stage}.efficiency"),
            InertiaKilogramSquareMetres = values.Number($"{stage}.inertia"),
            BacklashRadians = values.Number($"{stage}.backlash"),
            StiffnessNewtonMetresPerRadian = values.Maybe($"{stage}.stiffness") ?? double.PositiveInfinity,
        };
    }

    private static WormStage Worm(ValueSet values, string worm)
    {
        double Number(string name) => values.Number($"{worm}.{name}");
        return new WormStage
        {
            Starts = (int)Number("starts"),
            WheelTeeth = (int)Number("teeth"),
            LeadAngleRadians = values.Maybe($"{worm}.lead_angle") ?? 0.0,
            FrictionCoefficient = values.Maybe($"{worm}.friction") ?? 0.0,
            PressureAngleRadians = Number("pressure_angle"),
            InertiaKilogramSquareMetres = Number("inertia"),
            GivenDrivingEfficiency = values.Maybe($"{worm}.efficiency"),
            GivenBackDrivingEfficiency = values.Maybe($"{worm}.back_efficiency"),
            PeriodicError = new PeriodicError(
                Number("periodic_error"), Number("periodic_phase"), Number("second_harmonic"), Number("second_phase"), Number("runout"), Number("runout_phase")),
        };
    }
}
