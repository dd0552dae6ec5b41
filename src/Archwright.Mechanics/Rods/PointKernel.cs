using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
using Archwright.Mechanics.Numerics;
using Archwright.Mechanics.Sections;

namespace Archwright.Mechanics.Rods;

/// <summary>Kinematics of a wire at one place: strains, and their first and second derivatives.</summary>
/// <remarks>
/// <para>
/// A wire does not shear, so its section stands at right angles to the tangent t = P/|P|, P = dr/ds. The section's
/// frame is the rest frame (D1, D2, D3) carried from D1 to t by the smallest rotation, then turned about t by θ. With
/// l = |P|, m = 1/(l + P·D1), n = t + D1, the stereographic coordinates of the tangent a = m P·D2, b = m P·D3, and
/// C = d²r/ds², S = n·C:
/// </para>
/// <code>
///     A = (C·D2 − a S)/l          B = (C·D3 − b S)/l
///     curvature over width      κw =  A cos θ + B sin θ
///     curvature over thickness  κt =  A sin θ − B cos θ
///     twist less rest twist     τ  =  θ′ + b κw⁰ + a κt⁰ + (b C·D2 − a C·D3)/l
///     stretch                   ε  =  l − l⁰
/// </code>
/// <para>
/// The last line of τ is the spin about t of the smallest rotation as D1 and t move along the wire,
/// −(D1 × t)·(t′ + D1′)/(1 + D1·t). There is no history and no singularity short of a tangent that points back
/// (D1·t = −1). A, B and τ are linear in C, so the second derivative by C is nil. Kirchhoff's rod; the smallest
/// rotation as in M. Bergou, M. Wardetzky, S. Robinson, B. Audoly, E. Grinspun, "Discrete elastic rods", ACM Trans.
/// Graph. 27 (2008) 63 (from memory); the formulas here are derived anew and checked against differences in the tests.
/// </para>
/// </remarks>
internal struct PointKernel
{
    /// <summary>Curvatures of the deformed wire and its twist over the rest twist.</summary>
    private double _width, _thickness, _twist;

    private double _l, _il, _m, _a, _b, _s, _tc, _c2, _c3, _sin, _cos;
    private Vector3 _t, _n, _qc, _da, _db, _aByP, _bByP, _twistByP, _aByC, _bByC, _twistByC;

    /// <summary>Strain from rest.</summary>
    public SectionStrain Strain;

    /// <summary>Strain alone, for energies.</summary>
    /// <param name="rest">Rest frame.</param>
    /// <param name="p">dr/ds.</param>
    /// <param name="c">d²r/ds².</param>
    /// <param name="theta">Turn of the section [rad].</param>
    /// <param name="thetaRate">Its derivative [rad/mm].</param>
    public static SectionStrain StrainOf(in RestPoint rest, Vector3 p, Vector3 c, double theta, double thetaRate)
    {
        double l = p.Length;
        double il = 1 / l;
        double m = 1 / (l + Vector3.Dot(p, rest.D1));
        double a = m * Vector3.Dot(p, rest.D2);
        double b = m * Vector3.Dot(p, rest.D3);
        double s = Vector3.Dot(c, p) * il + Vector3.Dot(c, rest.D1);
        double c2 = Vector3.Dot(c, rest.D2);
        double c3 = Vector3.Dot(c, rest.D3);
        double aa = (c2 - a * s) * il;
        double bb = (c3 - b * s) * il;
        (double sin, double cos) = Math.SinCos(theta);
        return new SectionStrain(
            l - rest.Stretch,
            aa * sin - bb * cos - rest.OverThickness,
            aa * cos + bb * sin - rest.OverWidth,
            thetaRate + b * rest.OverWidth + a * rest.OverThickness + (b * c2 - a * c3) * il);
    }

    /// <summary>Strain and first derivatives.</summary>
    public void Evaluate(in RestPoint rest, Vector3 p, Vector3 c, double theta, double thetaRate)
    {
        _l = p.Length;
        _il = 1 / _l;
        _t = p * _il;
        _n = _t + rest.D1;
        _m = 1 / (_l + Vector3.Dot(p, rest.D1));
        _a = _m * Vector3.Dot(p, rest.D2);
        _b = _m * Vector3.Dot(p, rest.D3);
        _da = (rest.D2 - _n * _a) * _m;
        _db = (rest.D3 - _n * _b) * _m;
        _tc = Vector3.Dot(_t, c);
        _s = _tc + Vector3.Dot(c, rest.D1);
        _c2 = Vector3.Dot(c, rest.D2);
        _c3 = Vector3.Dot(c, rest.D3);
        _qc = (c - _t * _tc) * _il;

        double aa = (_c2 - _a * _s) * _il;
        double bb = (_c3 - _b * _s) * _il;
        double twisting = _b * _c2 - _a * _c3;
        if (theta == 0)
            (_sin, _cos) = (0, 1);
        else
            (_sin, _cos) = Math.SinCos(theta);
        _width = aa * _cos + bb * _sin;
        _thickness = aa * _sin - bb * _cos;
        _twist = thetaRate + _b * rest.OverWidth + _a * rest.OverThickness + twisting * _il;
        Strain = new SectionStrain(
            _l - rest.Stretch, _thickness - rest.OverThickness, _width - rest.OverWidth, _twist);

        _aByC = (rest.D2 - _n * _a) * _il;
        _bByC = (rest.D3 - _n * _b) * _il;
        _twistByC = (rest.D2 * _b - rest.D3 * _a) * _il;
        _aByP = (_da * _s + _qc * _a + _t * aa) * -_il;
        _bByP = (_db * _s + _qc * _b + _t * bb) * -_il;
        _twistByP = _db * (rest.OverWidth + _c2 * _il) + _da * (rest.OverThickness - _c3 * _il)
            - _t * (twisting * _il * _il);
    }

    /// <summary>Derivative of the energy by (P, C, θ, θ′).</summary>
    /// <param name="force">Work-conjugate to <see cref="Strain"/>.</param>
    /// <param name="g">Length 8, overwritten.</param>
    public readonly void Gradient(in SectionForce force, Span<double> g)
    {
        (double onA, double onB) = OnAxes(force);
        Vector3 byP = _t * force.Axial + _aByP * onA + _bByP * onB + _twistByP * force.Twist;
        Vector3 byC = _aByC * onA + _bByC * onB + _twistByC * force.Twist;
        Put(g, byP, byC, force.OverThickness * _width - force.OverWidth * _thickness, force.Twist);
    }

    /// <summary>Derivatives of the four strains by (P, C, θ, θ′): rows axial, over thickness, over width,
    /// twist.</summary>
    /// <param name="rows">Row-major 4 × 8, overwritten.</param>
    public readonly void StrainRows(Span<double> rows)
    {
        Put(rows, _t, default, 0, 0);
        Put(rows[8..], _aByP * _sin - _bByP * _cos, _aByC * _sin - _bByC * _cos, _width, 0);
        Put(rows[16..], _aByP * _cos + _bByP * _sin, _aByC * _cos + _bByC * _sin, -_thickness, 0);
        Put(rows[24..], _twistByP, _twistByC, 0, 1);
    }

    /// <summary>Second derivatives of the strains, weighted by the forces: the geometric part of the tangent.</summary>
    /// <param name="rest">Rest frame.</param>
    /// <param name="force">Weights.</param>
    /// <param name="h">Row-major 8 × 8 in (P, C, θ, θ′), overwritten; symmetric.</param>
    /// <remarks>
    /// With wA, wB the forces on A and B, T the torque, q = wA a + wB b,
    /// z = wA C2 + wB C3 + T (b C2 − a C3) − q S, Q = ∇n = (I − t tᵀ)/l and
    /// ∇∇a = −m (∇a nᵀ + n ∇aᵀ + a Q), ∇(Q C) = −(Q C tᵀ + t (Q C)ᵀ + (t·C) Q)/l, the sum is ∇∇(N l + T(a κt⁰ + b κw⁰)
    /// + z/l).
    /// </remarks>
    public readonly void Geometric(in RestPoint rest, in SectionForce force, Span<double> h)
    {
        (double onA, double onB) = OnAxes(force);
        double torque = force.Twist;
        double q = onA * _a + onB * _b;
        Vector3 dq = _da * onA + _db * onB;
        double z = onA * _c2 + onB * _c3 + torque * (_b * _c2 - _a * _c3) - q * _s;
        Vector3 dz = (_db * _c2 - _da * _c3) * torque - dq * _s - _qc * q;

        double il2 = _il * _il;
        double tc = _tc;
        double onDda = torque * rest.OverThickness - _il * (_s * onA + torque * _c3);
        double onDdb = torque * rest.OverWidth - _il * (_s * onB - torque * _c2);
        double onQ = force.Axial - _m * (onDda * _a + onDdb * _b) + il2 * (q * tc - z);
        Vector3 withN = (_da * onDda + _db * onDdb) * -_m;
        Vector3 withQc = dq * -_il;
        Vector3 withT = (_qc * q - dz) * il2;
        double onTt = 2 * z * il2 * _il;

        double qScale = onQ * _il;
        (Vector3 diagonal, double xy, double xz, double yz) = BySlopes(qScale, onTt - qScale, withN, withQc, withT);
        (Vector3 x, Vector3 y, Vector3 w) = Mixed(rest, onA, onB, torque, q, dq);
        (Vector3 pTurn, Vector3 cTurn, double turn) = ByTurn(force);

        // Whole rows at once: what is written number by number is slow to read back as a vector.
        ref double row = ref MemoryMarshal.GetReference(h[..64]);
        Vector512.Create(diagonal.X, xy, xz, x.X, y.X, w.X, pTurn.X, 0).StoreUnsafe(ref row);
        Vector512.Create(xy, diagonal.Y, yz, x.Y, y.Y, w.Y, pTurn.Y, 0).StoreUnsafe(ref row, 8);
        Vector512.Create(xz, yz, diagonal.Z, x.Z, y.Z, w.Z, pTurn.Z, 0).StoreUnsafe(ref row, 16);
        Vector512.Create(x.X, x.Y, x.Z, 0, 0, 0, cTurn.X, 0).StoreUnsafe(ref row, 24);
        Vector512.Create(y.X, y.Y, y.Z, 0, 0, 0, cTurn.Y, 0).StoreUnsafe(ref row, 32);
        Vector512.Create(w.X, w.Y, w.Z, 0, 0, 0, cTurn.Z, 0).StoreUnsafe(ref row, 40);
        Vector512.Create(pTurn.X, pTurn.Y, pTurn.Z, cTurn.X, cTurn.Y, cTurn.Z, turn, 0).StoreUnsafe(ref row, 48);
        Vector512<double>.Zero.StoreUnsafe(ref row, 56);
    }

    // The 3 × 3 block of P: Q, t tᵀ and three symmetric pairs u vᵀ + v uᵀ.
    private readonly (Vector3 Diagonal, double Xy, double Xz, double Yz) BySlopes(
        double onUnit, double onTt, Vector3 withN, Vector3 withQc, Vector3 withT)
    {
        Vector3 t = _t;
        Vector3 n = _n;
        Vector3 c = _qc;
        Vector3 w = withT + t * (onTt / 2);
        var diagonal = new Vector3(
            onUnit + 2 * (withN.X * n.X + withQc.X * c.X + w.X * t.X),
            onUnit + 2 * (withN.Y * n.Y + withQc.Y * c.Y + w.Y * t.Y),
            onUnit + 2 * (withN.Z * n.Z + withQc.Z * c.Z + w.Z * t.Z));
        double xy = withN.X * n.Y + n.X * withN.Y + withQc.X * c.Y + c.X * withQc.Y + w.X * t.Y + t.X * w.Y;
        double xz = withN.X * n.Z + n.X * withN.Z + withQc.X * c.Z + c.X * withQc.Z + w.X * t.Z + t.X * w.Z;
        double yz = withN.Y * n.Z + n.Y * withN.Z + withQc.Y * c.Z + c.Y * withQc.Z + w.Y * t.Z + t.Y * w.Z;
        return (diagonal, xy, xz, yz);
    }

    // Columns of ∂²/∂P∂C of the weighted strains, from the derivative by C:
    // G = (wA D2 + wB D3 + T(b D2 − a D3) − q n)/l. Column j is (T (∇b D2ⱼ − ∇a D3ⱼ) − ∇q nⱼ − q Q eⱼ − t Gⱼ)/l.
    private readonly (Vector3 X, Vector3 Y, Vector3 Z) Mixed(
        in RestPoint rest, double onA, double onB, double torque, double q, Vector3 dq)
    {
        Vector3 byC = _aByC * onA + _bByC * onB + _twistByC * torque;
        double across = q * _il * _il;
        Vector3 db = _db * (torque * _il);
        Vector3 da = _da * (-torque * _il);
        Vector3 dn = dq * -_il;
        Vector3 dt = _t * -_il;
        Vector3 x = db * rest.D2.X + da * rest.D3.X + dn * _n.X + dt * byC.X + _t * (across * _t.X);
        Vector3 y = db * rest.D2.Y + da * rest.D3.Y + dn * _n.Y + dt * byC.Y + _t * (across * _t.Y);
        Vector3 z = db * rest.D2.Z + da * rest.D3.Z + dn * _n.Z + dt * byC.Z + _t * (across * _t.Z);
        return (new Vector3(x.X - across, x.Y, x.Z), new Vector3(y.X, y.Y - across, y.Z),
            new Vector3(z.X, z.Y, z.Z - across));
    }

    // ∂κw/∂θ = −κt, ∂κt/∂θ = κw.
    private readonly (Vector3 ByP, Vector3 ByC, double Twice) ByTurn(in SectionForce force)
    {
        double onA = force.OverThickness * _cos - force.OverWidth * _sin;
        double onB = force.OverThickness * _sin + force.OverWidth * _cos;
        return (_aByP * onA + _bByP * onB, _aByC * onA + _bByC * onB,
            -force.OverWidth * _width - force.OverThickness * _thickness);
    }

    private readonly (double OnA, double OnB) OnAxes(in SectionForce force) =>
        (force.OverWidth * _cos + force.OverThickness * _sin, force.OverWidth * _sin - force.OverThickness * _cos);

    private static void Put(Span<double> row, Vector3 byP, Vector3 byC, double byTheta, double byThetaRate) =>
        Vector512.Create(byP.X, byP.Y, byP.Z, byC.X, byC.Y, byC.Z, byTheta, byThetaRate)
            .StoreUnsafe(ref MemoryMarshal.GetReference(row[..8]));
}
