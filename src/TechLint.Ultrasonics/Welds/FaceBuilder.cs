using System.Collections.Immutable;
using TechLint.Ultrasonics.Examinations;
using TechLint.Ultrasonics.Quantities;
using TechLint.Ultrasonics.Studies;

namespace TechLint.Ultrasonics.Welds;

/// <summary>Builds one fusion face of a preparation, outer surface first.</summary>
internal static class FaceBuilder
{
    public static ImmutableArray<FacePiece> Of(Preparation preparation, double thickness, Side side)
    {
        var sign = side == Side.Left ? -1 : 1;
        var gap = preparation.Shape == PreparationShape.PressureWeld
            ? preparation.BondLineWidth.Millimetres / 2
            : preparation.RootGap.Millimetres / 2;
        var isDouble = preparation.Shape is PreparationShape.DoubleV or PreparationShape.DoubleU or PreparationShape.DoubleJ;
        var isOneSided = preparation.Shape
            is PreparationShape.SingleBevel or PreparationShape.SingleJ or PreparationShape.DoubleJ;
        var isPlain = preparation.Shape is PreparationShape.Square or PreparationShape.PressureWeld
            || (isOneSided && preparation.BevelledSide != side);
        if (isPlain) return [Straight(sign * gap, 0, sign * gap, thickness)];

        var rootFace = Math.Clamp(preparation.RootFace.Millimetres, 0, thickness);
        var grooves = thickness - rootFace;
        var outer = isDouble ? Math.Clamp(preparation.Outer.DepthShare.At(grooves), 0, grooves)
            : preparation.Opens == Surface.Outside ? grooves
            : 0;
        var inner = grooves - outer;
        var innerGroove = isDouble ? preparation.Inner : preparation.Outer;
        var pieces = ImmutableArray.CreateBuilder<FacePiece>();
        if (outer > 0)
        {
            // From the root face up, then turned round: outer surface first.
            var rising = Groove(preparation.Shape, preparation.Outer, outer, gap);
            for (var index = rising.Count - 1; index >= 0; index--) pieces.Add(Placed(rising[index].Reversed(), sign, outer, -1));
        }

        if (rootFace > 0) pieces.Add(Straight(sign * gap, outer, sign * gap, outer + rootFace));
        if (inner > 0)
        {
            foreach (var piece in Groove(preparation.Shape, innerGroove, inner, gap)) pieces.Add(Placed(piece, sign, outer + rootFace, 1));
        }

        return pieces.ToImmutable();
    }

    /// <summary>A profile's points; a face that stops short of a surface goes on straight down to it, and what lies beyond the wall is cut off.</summary>
    public static ImmutableArray<FacePiece> FromPoints(EquatableArray<SectionPoint> points, double thickness)
    {
        var places = new List<(double Y, double Z)>();
        foreach (var point in points) places.Add((point.Across.Millimetres, point.Depth.At(thickness)));
        if (places.Count == 0) places.Add((0, 0));
        if (places[0].Z > 0) places.Insert(0, (places[0].Y, 0));
        if (places[^1].Z < thickness) places.Add((places[^1].Y, thickness));
        var pieces = ImmutableArray.CreateBuilder<FacePiece>();
        for (var index = 1; index < places.Count; index++)
        {
            var ((fromY, fromZ), (toY, toZ)) = (places[index - 1], places[index]);
            if (fromZ >= thickness && toZ >= thickness && fromZ != toZ) break;
            if (toZ > thickness) (toY, toZ) = (fromY + ((toY - fromY) * (thickness - fromZ) / (toZ - fromZ)), thickness);
            pieces.Add(Straight(fromY, fromZ, toY, toZ));
            if (toZ >= thickness) break;
        }

        return pieces.ToImmutable();
    }

    /// <summary>A groove's face by height above the root face, bottom first.</summary>
    private static List<Rise> Groove(PreparationShape shape, Groove groove, double height, double gap)
    {
        var slope = Math.Tan(groove.FaceAngle.Radians);
        switch (shape)
        {
            case PreparationShape.SingleU or PreparationShape.DoubleU or PreparationShape.SingleJ or PreparationShape.DoubleJ
                when groove.Radius.Millimetres > 0:
            {
                var radius = groove.Radius.Millimetres;
                var arcHeight = Math.Min(height, radius * (1 - Math.Sin(groove.FaceAngle.Radians)));
                var arcReach = gap + Math.Sqrt((radius * radius) - ((radius - arcHeight) * (radius - arcHeight)));
                var pieces = new List<Rise> { new(gap, 0, arcReach, arcHeight, gap, radius) };
                if (height > arcHeight) pieces.Add(new(arcReach, arcHeight, arcReach + ((height - arcHeight) * slope), height));
                return pieces;
            }

            case PreparationShape.CompoundV:
            {
                var at = Math.Clamp(height - groove.BreakDepth.Millimetres, 0, height);
                var reach = gap + (at * slope);
                var pieces = new List<Rise>();
                if (at > 0) pieces.Add(new(gap, 0, reach, at));
                if (height > at) pieces.Add(new(reach, at, reach + ((height - at) * Math.Tan(groove.UpperFaceAngle.Radians)), height));
                return pieces;
            }

            default:
                return [new(gap, 0, gap + (height * slope), height)];
        }
    }

    /// <summary>Heights become depths: from the level of the root face's end, upwards (−1) or downwards (+1).</summary>
    private static FacePiece Placed(Rise rise, int sign, double level, int downwards)
    {
        SectionPlace Place(double reach, double height) => new(new Length(sign * reach), new Length(level + (downwards * height)));
        return new FacePiece(
            Place(rise.FromReach, rise.FromHeight), Place(rise.ToReach, rise.ToHeight),
            rise.Radius > 0 ? Place(rise.CentreReach, rise.Radius) : null, new Length(rise.Radius));
    }

    private static FacePiece Straight(double fromY, double fromZ, double toY, double toZ) => new(
        new SectionPlace(new Length(fromY), new Length(fromZ)), new SectionPlace(new Length(toY), new Length(toZ)), null, Length.Zero);

    /// <summary>A piece by height; an arc's centre lies at the height of its radius.</summary>
    private readonly record struct Rise(
        double FromReach, double FromHeight, double ToReach, double ToHeight, double CentreReach = 0, double Radius = 0)
    {
        public Rise Reversed() => new(ToReach, ToHeight, FromReach, FromHeight, CentreReach, Radius);
    }
}
