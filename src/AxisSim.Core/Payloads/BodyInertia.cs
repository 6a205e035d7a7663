namespace AxisSim.Core.Payloads;

/// <summary>Inertia tensors of homogeneous bodies.</summary>
/// <remarks>
/// About the centre of mass, m mass, L length, R and r outer and inner radius, w and h width and height:
/// cylinder <c>m R2/2</c> along, <c>m (3 R2 + L2)/12</c> across; thick tube <c>m (R2 + r2)/2</c> along,
/// <c>m (3 (R2 + r2) + L2)/12</c> across; box <c>m (a2 + b2)/12</c> about the axis across the sides a and b (textbook formulas).
/// </remarks>
internal static class BodyInertia
{
    /// <summary>Tensor of a body about its own centre of mass, kg m2.</summary>
    public static InertiaTensor AboutCentre(PayloadBody body) => body.Shape switch
    {
        BodyShape.Point => default,
        BodyShape.Cylinder => Round(body.MassKilograms, body.LengthMetres, body.DiameterMetres, 0.0, body.Direction),
        BodyShape.Tube => Round(body.MassKilograms, body.LengthMetres, body.DiameterMetres, body.InnerDiameterMetres, body.Direction),
        BodyShape.Box => Box(body),
        _ => throw new ArgumentOutOfRangeException(nameof(body), body.Shape, "no such body shape"),
    };

    /// <summary>Tensor of a body about the origin of the tube frame, kg m2.</summary>
    public static InertiaTensor AboutOrigin(PayloadBody body) =>
        AboutCentre(body).Shifted(body.MassKilograms, body.OutMetres, body.ForwardMetres, body.SideMetres);

    /// <summary>Tensor of a cylinder or tube about its centre of mass, kg m2.</summary>
    public static InertiaTensor Round(double massKilograms, double lengthMetres, double diameterMetres, double innerDiameterMetres, BodyDirection direction)
    {
        double squares = ((diameterMetres * diameterMetres) + (innerDiameterMetres * innerDiameterMetres)) / 4.0;
        double along = massKilograms * squares / 2.0;
        double across = massKilograms * ((3.0 * squares) + (lengthMetres * lengthMetres)) / 12.0;
        return direction switch
        {
            BodyDirection.Out => new(along, across, across, 0, 0, 0),
            BodyDirection.Forward => new(across, along, across, 0, 0, 0),
            _ => new(across, across, along, 0, 0, 0),
        };
    }

    private static InertiaTensor Box(PayloadBody body)
    {
        // Width and height lie along the two directions that the length leaves free, in the order Out, Forward, Side.
        (double o, double f, double s) = body.Direction switch
        {
            BodyDirection.Out => (body.LengthMetres, body.WidthMetres, body.HeightMetres),
            BodyDirection.Forward => (body.WidthMetres, body.LengthMetres, body.HeightMetres),
            _ => (body.WidthMetres, body.HeightMetres, body.LengthMetres),
        };
        double k = body.MassKilograms / 12.0;
        return new(k * ((f * f) + (s * s)), k * ((o * o) + (s * s)), k * ((o * o) + (f * f)), 0, 0, 0);
    }
}
