using TechLint.Ultrasonics.Quantities;

namespace TechLint.Ultrasonics.Examinations;

/// <summary>Forms of a joint before welding.</summary>
public enum PreparationShape
{
    Square, SingleV, DoubleV, SingleU, DoubleU, SingleJ, DoubleJ, SingleBevel, CompoundV, PressureWeld, Profile,
}

/// <summary>
/// The weld across its run. <paramref name="Cap"/> is the reinforcement on the outer surface, <paramref name="Root"/> on the inner one.
/// </summary>
public sealed record WeldSection(Preparation Preparation, Reinforcement? Cap, Reinforcement? Root, Length? HeatAffectedZone);

/// <summary>Added metal on one surface. Of height 0 it is flush: a mirror, and no obstacle to a probe.</summary>
public sealed record Reinforcement(Length Width, Length Height, Length Centre)
{
    public bool IsFlush => Height.Millimetres <= 0;
}

/// <summary>A joint before welding.</summary>
/// <param name="Shape">The form of the joint before welding.</param>
/// <param name="Opens">The surface that a single-sided preparation opens to.</param>
/// <param name="BevelledSide">For single-bevel and j shapes: the side that is bevelled.</param>
/// <param name="Outer">The outer (or only) group.</param>
/// <param name="Inner">The inner group of a double preparation.</param>
/// <param name="RootFace">Height of the root face (land).</param>
/// <param name="RootGap">Gap between the edges.</param>
/// <param name="Misalignment">Greatest offset of the edges (hi-lo).</param>
/// <param name="BondLineWidth">For pressure welds.</param>
/// <param name="LeftFace">For profiles: points of the left fusion face, outer surface first.</param>
/// <param name="RightFace">For profiles: points of the right fusion face.</param>
public sealed record Preparation(
    PreparationShape Shape, Surface Opens, Side BevelledSide, Groove Outer, Groove Inner, Length RootFace, Length RootGap,
    Length Misalignment, Length BondLineWidth, EquatableArray<SectionPoint> LeftFace, EquatableArray<SectionPoint> RightFace);

/// <summary>One groove of a preparation. Angles are of one face from the weld's middle plane.</summary>
/// <param name="FaceAngle">Half the included angle, or the bevel angle of a one-sided groove.</param>
/// <param name="DepthShare">For double preparations: share of (thickness − root face) this side takes; a length is a depth in mm.</param>
/// <param name="Radius">Root radius of u and j forms.</param>
/// <param name="UpperFaceAngle">Compound forms: face angle between the surface and <paramref name="BreakDepth"/>.</param>
/// <param name="BreakDepth">Compound forms: where the angle changes, below the surface that the groove opens to.</param>
public sealed record Groove(Angle FaceAngle, Depth DepthShare, Length Radius, Angle UpperFaceAngle, Length BreakDepth)
{
    public static readonly Groove None = new(default, new Depth(50, IsShare: true), default, default, default);
}

/// <summary>A point of the weld section, from the weld centreline and the outer surface.</summary>
public readonly record struct SectionPoint(Depth Depth, Length Across);
