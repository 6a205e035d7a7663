namespace AxisSim.Core.Payloads;

/// <summary>Inertia tensor in the tube frame (Out, Forward, Side) about its origin or a centre of mass, kg m2.</summary>
/// <remarks>
/// Diagonal <c>I_oo = sum m (f2 + s2)</c> and cyclically; products with the sign of the tensor's off-diagonal elements,
/// <c>I_of = -sum m o f</c>. So the inertia about a unit vector u through the point is <c>u . I u</c>.
/// </remarks>
/// <param name="OutOut">About Out.</param>
/// <param name="ForwardForward">About Forward.</param>
/// <param name="SideSide">About Side.</param>
/// <param name="OutForward">Element Out-Forward.</param>
/// <param name="OutSide">Element Out-Side.</param>
/// <param name="ForwardSide">Element Forward-Side.</param>
internal readonly record struct InertiaTensor(
    double OutOut, double ForwardForward, double SideSide, double OutForward, double OutSide, double ForwardSide)
{
    /// <summary>Sum of two tensors about the same point.</summary>
    public static InertiaTensor operator +(InertiaTensor a, InertiaTensor b) => new(
        a.OutOut + b.OutOut,
        a.ForwardForward + b.ForwardForward,
        a.SideSide + b.SideSide,
        a.OutForward + b.OutForward,
        a.OutSide + b.OutSide,
        a.ForwardSide + b.ForwardSide);

    /// <summary>Parallel-axis theorem: from the centre of mass to a point from which the centre lies at (out, forward, side), m.</summary>
    public InertiaTensor Shifted(double massKilograms, double outMetres, double forwardMetres, double sideMetres) => this + new InertiaTensor(
        massKilograms * ((forwardMetres * forwardMetres) + (sideMetres * sideMetres)),
        massKilograms * ((outMetres * outMetres) + (sideMetres * sideMetres)),
        massKilograms * ((outMetres * outMetres) + (forwardMetres * forwardMetres)),
        -massKilograms * outMetres * forwardMetres,
        -massKilograms * outMetres * sideMetres,
        -massKilograms * forwardMetres * sideMetres);
}
