using System.Collections.Immutable;
using TechLint.Ultrasonics.Examinations;
using TechLint.Ultrasonics.Quantities;
using TechLint.Ultrasonics.Studies;
using TechLint.Ultrasonics.Welds;

namespace TechLint.Ultrasonics.Faces;

/// <summary>Walks along both faces in steps of at most 0.1 mm and sums what is served; in one order, on one thread: the same bits anywhere.</summary>
internal static class FaceKernel
{
    /// <summary>Along the face, mm; a share of a face of 20 mm is so known to half a percent at each of its edges.</summary>
    private const double Step = 0.1;

    /// <summary>Short pieces are looked at this often at least.</summary>
    private const int LeastCells = 8;

    /// <summary>No wall of this trade has a longer piece of face than these steps.</summary>
    private const int MostCells = 20_000;

    /// <summary>An end this close to a surface (mm) lies on it.</summary>
    private const double OnSurface = 1e-6;

    private const double Hundred = 100;

    public static FaceStudy Of(Examination examination, FacePlaceInRange place)
    {
        var diameter = place.OutsideDiameter is { } outside ? new Length(outside) : (Length?)null;
        var sections = ImmutableArray.CreateBuilder<PassSection>();
        foreach (var pass in examination.Passes)
        {
            if (PassSection.Of(examination, pass, new Length(place.Thickness), diameter) is not { } section) return FaceStudy.None(PassWork.ImpossibleWall);
            sections.Add(section);
        }

        var tolerance = examination.FusionFaceIncidence;
        if (!(tolerance.Radians >= 0)) return FaceStudy.None("the tolerance from the normal is no angle");
        var outline = WeldOutline.At(examination.Weld.Preparation, place.Thickness);
        var froms = SidesOf(sections);
        var faces = ImmutableArray.CreateBuilder<FaceService>();
        foreach (var face in (ReadOnlySpan<Side>)[Side.Left, Side.Right])
        {
            var pieces = face == Side.Left ? outline.Left : outline.Right;
            var passes = sections.Select(section => FacePass.Of(section, face, place)).ToImmutableArray();
            var cells = pieces.Select(piece => CellsOf(piece, face, passes, froms, place.Thickness, tolerance.Radians)).ToList();
            if (cells.Any(list => list.Length > MostCells)) return FaceStudy.None("a fusion face is too long to be looked at");
            for (var index = 0; index < froms.Length; index++) faces.Add(Service(face, froms[index], index, pieces, cells, place, face == Side.Right));
        }

        var images = examination.Passes.Any(pass => pass.Beams.Any(beam => beam.Scan == ScanKind.TotalFocusing));
        return images && faces.Any(service => service.Served.Percent < Hundred)
            ? FaceStudy.None("what total-focusing images meet is not computed, and the others do not meet all")
            : new FaceStudy(tolerance, faces.ToImmutable(), null);
    }

    /// <summary>Sides that some probe stands on.</summary>
    private static ImmutableArray<Side> SidesOf(IEnumerable<PassSection> sections)
    {
        var all = sections.SelectMany(section => section.Pass.Probes.Select(probe => FacePass.SideOf(section, probe))).ToHashSet();
        return [.. new[] { Side.Left, Side.Right }.Where(all.Contains)];
    }

    /// <summary>A piece cut into equal cells: its middles, judged from each side.</summary>
    private static Cell[] CellsOf(FacePiece piece, Side face, ImmutableArray<FacePass> passes, ImmutableArray<Side> froms, double thickness, double tolerance)
    {
        var length = FacePoint.LengthOf(piece);
        if (!(length > 0)) return [];
        if (!(length / Step < MostCells)) return new Cell[MostCells + 1];
        var cells = new Cell[Math.Max(LeastCells, (int)Math.Ceiling(length / Step))];
        var opening = (piece.From.Z.Millimetres <= OnSurface, piece.To.Z.Millimetres >= thickness - OnSurface);
        var points = new FacePoint[passes.Length];
        for (var cell = 0; cell < cells.Length; cell++)
        {
            var share = (cell + 0.5) / cells.Length;
            for (var index = 0; index < passes.Length; index++) points[index] = FacePoint.On(piece, share, passes[index].Section);
            var meetings = new FaceMeeting[froms.Length];
            for (var side = 0; side < froms.Length; side++) meetings[side] = FaceJudge.Judge(passes, points, froms[side], face, opening, tolerance);
            var (y, z, _, _) = FacePoint.At(piece, share);
            cells[cell] = new Cell(length / cells.Length, y, z, meetings);
        }

        return cells;
    }

    private static FaceService Service(
        Side face, Side from, int side, ImmutableArray<FacePiece> pieces, List<Cell[]> cells, FacePlaceInRange place, bool isLowered)
    {
        var sum = new Sum();
        var services = ImmutableArray.CreateBuilder<FacePieceService>(pieces.Length);
        for (var index = 0; index < pieces.Length; index++)
        {
            var own = new Sum();
            foreach (var cell in cells[index])
            {
                own.Add(cell, side);
                sum.Add(cell, side);
            }

            services.Add(new FacePieceService(
                Lowered(pieces[index].From), Lowered(pieces[index].To), pieces[index].Centre is not null, SlopeOf(pieces[index]), own.Served, own.By,
                own.WorstPlace(Lowered)));
        }

        return new FaceService(
            face, from, sum.Served, sum.FromEither, sum.By, sum.Ways(), sum.Legs(), services.ToImmutable(), sum.WorstPlace(Lowered));

        // The right edge moves with its step.
        SectionPlace Lowered(SectionPlace at) =>
            isLowered && place.Misalignment != 0 ? at with { Z = new Length(at.Z.Millimetres + place.Misalignment) } : at;
    }

    private static Angle SlopeOf(FacePiece piece) => Angle.FromRadians(Math.Atan2(
        Math.Abs(piece.To.Y.Millimetres - piece.From.Y.Millimetres), Math.Abs(piece.To.Z.Millimetres - piece.From.Z.Millimetres)));

    private readonly record struct Cell(double Length, double Y, double Z, FaceMeeting[] Meetings);

    /// <summary>What adds up along a face.</summary>
    private sealed class Sum
    {
        private readonly double[] ways = new double[5];
        private readonly double[] legs = new double[32];
        private double whole;
        private double either;
        private (Cell Cell, double Incidence)? worstOpen;
        private (Cell Cell, double Incidence)? worstMet;

        public Share Served => Part(whole - ways[(int)FaceWay.None]);

        public Share FromEither => Part(either);

        /// <summary>Of equals the surest.</summary>
        public FaceWay By
        {
            get
            {
                var best = FaceWay.None;
                for (var way = 1; way < ways.Length; way++)
                {
                    if (ways[way] > 0 && (best == FaceWay.None || ways[way] > ways[(int)best])) best = (FaceWay)way;
                }

                return best;
            }
        }

        public void Add(in Cell cell, int side)
        {
            var meeting = cell.Meetings[side];
            whole += cell.Length;
            ways[(int)meeting.Way] += cell.Length;
            if (Array.Exists(cell.Meetings, any => any.Way != FaceWay.None)) either += cell.Length;
            for (var leg = 0; leg < legs.Length; leg++)
            {
                if ((meeting.Legs >> leg & 1) != 0) legs[leg] += cell.Length;
            }

            if (meeting.Way == FaceWay.None && !(worstOpen?.Incidence >= meeting.Incidence)) worstOpen = (cell, meeting.Incidence);
            if (meeting.Way == FaceWay.Beam && !(worstMet?.Incidence >= meeting.Incidence)) worstMet = (cell, meeting.Incidence);
        }

        public ImmutableArray<FaceWayShare> Ways() =>
            [.. Enumerable.Range(1, ways.Length - 1).Where(way => ways[way] > 0).Select(way => new FaceWayShare((FaceWay)way, Part(ways[way])))];

        public ImmutableArray<FaceLegShare> Legs() =>
            [.. Enumerable.Range(0, legs.Length).Where(leg => legs[leg] > 0).Select(leg => new FaceLegShare(leg + 1, Part(legs[leg])))];

        public FacePlace? WorstPlace(Func<SectionPlace, SectionPlace> lowered)
        {
            if ((worstOpen ?? worstMet) is not var (cell, incidence)) return null;
            return new FacePlace(
                lowered(new SectionPlace(new Length(cell.Y), new Length(cell.Z))), double.IsFinite(incidence) ? Angle.FromRadians(incidence) : null);
        }

        // Cells are added up in another order than the whole: what is all of it is so exactly.
        private Share Part(double length) => new(whole > 0 ? length >= whole * (1 - 1e-12) ? Hundred : Math.Max(0, Hundred * length / whole) : double.NaN);
    }
}
