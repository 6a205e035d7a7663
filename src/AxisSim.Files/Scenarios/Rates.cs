namespace AxisSim.Files.Scenarios;

using AxisSim.Files.Units;

/// <summary>Carries rates between axis and motor: motor speed = axis rate times total ratio; rad/s = steps/s times 2 pi / steps per revolution.</summary>
internal static class Rates
{
    /// <summary>Total ratio of an axis; NaN while its parts are not known.</summary>
    public static double TotalRatio(ValueSet values, string axis)
    {
        double ratio = values.Number($"{axis}.worm.teeth") / values.Number($"{axis}.worm.starts");
        foreach (string stage in values.Document.ItemsOf($"{axis}.stages"))
        {
            Value given = values[$"{axis}.stages.{stage}.ratio"];
            ratio *= given.Number / given.Second;
        }

        return ratio;
    }

    /// <summary>A rate as motor speed, rad/s.</summary>
    public static double AtMotor(ValueSet values, string axis, string path)
    {
        Value rate = values[path];
        return rate.Place switch
        {
            RatePlace.Axis => rate.Number * TotalRatio(values, axis),
            RatePlace.MotorSteps => rate.Number * 2.0 * Math.PI / values.Number($"{axis}.motor.steps_per_revolution"),
            _ => rate.Number,
        };
    }

    /// <summary>A rate as axis rate, rad/s.</summary>
    public static double AtAxis(ValueSet values, string axis, string path)
    {
        Value rate = values[path];
        return rate.Place == RatePlace.Axis ? rate.Number : AtMotor(values, axis, path) / TotalRatio(values, axis);
    }
}
