using System.Globalization;
using AxisSim.Core.Controllers;
using AxisSim.Core.Mount;
using AxisSim.Files.Keys;
using AxisSim.Files.Units;

namespace AxisSim.Files.Scenarios;

/// <summary>The numbers of a user's own controller from values; a unit at the motor becomes one at the axis, by the gearing and the microsteps of each axis.</summary>
internal static class ControllerBinding
{
    /// <summary>The controller; null when the scenario has no setting of one.</summary>
    public static ControllerScales? Bind(ValueSet values, AxisModel? polar, AxisModel? declination) =>
        values.Document.ItemsOf(ControllerKeys.List).Count == 0 ? null : new ControllerScales(values.Text("controller.name"), Of(values, "polar", polar), Of(values, "declination", declination));

    /// <summary>The settings of one axis.</summary>
    public static IReadOnlyList<ControllerScale> Of(ValueSet values, string axis, AxisModel? model) =>
        model is null ? [] : [.. values.Document.ItemsOf(ControllerKeys.List).Where(item => IsFor(values, item, axis)).Select(item => Scale(values, item, model))];

    /// <summary>Whether a setting is for an axis.</summary>
    public static bool IsFor(ValueSet values, string item, string axis) => values.Text($"{ControllerKeys.List}.{item}.axis") is "both" or "" || values.Text($"{ControllerKeys.List}.{item}.axis") == axis;

    /// <summary>What a setting sets; null for a word that was refused.</summary>
    public static (string Word, ControllerQuantity Quantity, Dimension Dimension)? Sets(ValueSet values, string item)
    {
        string word = values.Text($"{ControllerKeys.List}.{item}.sets");
        return ControllerKeys.Quantities.Any(one => one.Word == word) ? ControllerKeys.Quantities.First(one => one.Word == word) : null;
    }

    private static ControllerScale Scale(ValueSet values, string item, AxisModel model)
    {
        string path = $"{ControllerKeys.List}.{item}";
        (_, ControllerQuantity quantity, Dimension dimension) = Sets(values, item)!.Value;
        string unit = values.Text($"{path}.unit").Trim().Replace('\u2212', '-'), zero = values.Given($"{path}.zero")?.Text.Trim() ?? "";
        return new ControllerScale(
            values.Text($"{path}.name"),
            quantity,
            Si(unit, dimension, quantity, model),
            double.Parse(unit.AsSpan(0, NumberText.Length(unit)), NumberStyles.Float, CultureInfo.InvariantCulture),
            unit[NumberText.Length(unit)..].Trim(),
            zero.Length == 0 ? 0.0 : Si(zero, dimension, quantity, model),
            values.Number($"{path}.least"),
            values.Maybe($"{path}.greatest") ?? double.PositiveInfinity,
            values.Number($"{path}.step"),
            zero);
    }

    // Rates and accelerations at the axis, rad/s and rad/s2; a changeover at the motor, as the model has it.
    private static double Si(string text, Dimension dimension, ControllerQuantity quantity, AxisModel model)
    {
        QuantityReading reading = QuantityText.Read(text, dimension);
        double ratio = model.Train.TotalRatio, fullStep = model.Motor.FullStepRadians;
        double atMotor = reading.Place switch
        {
            RatePlace.Axis => reading.Si * ratio,
            RatePlace.MotorSteps => reading.Si * fullStep,
            RatePlace.Pulses => reading.Si * fullStep / model.Drive.MicrostepsPerFullStep,
            _ => reading.Si,
        };
        return quantity == ControllerQuantity.Changeover ? atMotor : reading.Place == RatePlace.Axis ? reading.Si : atMotor / ratio;
    }
}
