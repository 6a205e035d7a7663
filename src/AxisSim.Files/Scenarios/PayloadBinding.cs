using AxisSim.Core.Payloads;

namespace AxisSim.Files.Scenarios;

/// <summary>Bodies, counterweight and lumped loads from values.</summary>
internal static class PayloadBinding
{
    /// <summary>The bodies; null when there are none.</summary>
    public static PayloadModel? Bodies(ValueSet values)
    {
        IReadOnlyList<string> items = values.Document.ItemsOf("payload");
        return items.Count == 0 ? null : new PayloadModel { Bodies = [.. items.Select(item => Body(values, $"payload.{item}"))], Counterweight = Weight(values) };
    }

    /// <summary>The lumped load of an axis; null when there is none.</summary>
    public static LumpedLoad? Lumped(ValueSet values, string axis) => values.Document.Mentions($"{axis}.load")
        ? new LumpedLoad(values.Number($"{axis}.load.inertia"), values.Number($"{axis}.load.imbalance"), values.Number($"{axis}.load.phase"))
        : null;

    private static PayloadBody Body(ValueSet values, string body)
    {
        double OrZero(string name) => values.Maybe($"{body}.{name}") ?? 0.0;
        return new PayloadBody
        {
            Name = values.Text($"{body}.name"),
            Shape = values.Text($"{body}.shape") switch { "tube" => BodyShape.Tube, "cylinder" => BodyShape.Cylinder, "box" => BodyShape.Box, _ => BodyShape.Point },
            MassKilograms = values.Number($"{body}.mass"),
            OutMetres = values.Number($"{body}.out"),
            ForwardMetres = values.Number($"{body}.forward"),
            SideMetres = values.Number($"{body}.side"),
            Direction = values.Text($"{body}.direction") switch { "out" => BodyDirection.Out, "side" => BodyDirection.Side, _ => BodyDirection.Forward },
            LengthMetres = OrZero("length"),
            DiameterMetres = OrZero("diameter"),
            InnerDiameterMetres = OrZero("inner_diameter"),
            WidthMetres = OrZero("width"),
            HeightMetres = OrZero("height"),
        };
    }

    private static Counterweight? Weight(ValueSet values) => !values.Document.Mentions("counterweight") ? null : new Counterweight
    {
        MassKilograms = values.Number("counterweight.mass"),
        DistanceMetres = values.Number("counterweight.distance"),
        GreatestDistanceMetres = values.Maybe("counterweight.greatest_distance"),
        DiameterMetres = values.Number("counterweight.diameter"),
        LengthMetres = values.Number("counterweight.length"),
        BarMassKilograms = values.Number("counterweight.bar_mass"),
        BarLengthMetres = values.Number("counterweight.bar_length"),
        TurnsWithDeclination = values.Number("counterweight.turns_with_declination") > 0.0,
    };
}
