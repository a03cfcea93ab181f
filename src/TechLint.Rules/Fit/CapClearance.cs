using TechLint.Model.Requirements;
using TechLint.Rules.Registry;
using TechLint.Ultrasonics.Examinations;

namespace TechLint.Rules.Fit;

/// <summary>How near a wedge may come to the weld on one side. Lengths in mm from the centreline.</summary>
/// <param name="Name"><c>cap</c> or <c>root</c>: what stands on the scanning surface.</param>
/// <param name="Toe">Where it ends on this side.</param>
/// <param name="Clearance">Beyond it.</param>
/// <param name="LeastOffset">Toe, clearance and positioning tolerance together.</param>
internal sealed record CapClearance(string Name, double Toe, double Clearance, double LeastOffset, Citation? Source)
{
    /// <summary>Null where the scanning surface is flush.</summary>
    public static CapClearance? Of(TechniqueContext context, Examination examination, Pass pass, Side side)
    {
        var outside = pass.ScanningSurface == Surface.Outside;
        var reinforcement = outside ? examination.Weld.Cap : examination.Weld.Root;
        if (reinforcement is null || reinforcement.IsFlush) return null;

        // Seen from inside, the section is mirrored, and so is the side the reinforcement leans to.
        var lean = outside ? reinforcement.Centre.Millimetres : -reinforcement.Centre.Millimetres;
        var toe = (reinforcement.Width.Millimetres / 2) + (side == Side.Left ? -lean : lean);
        var limit = context.Requirements.Find(LimitNames.CapClearance, new LimitQuery());
        var clearance = limit?.Value.InBase ?? 0;
        return new(outside ? "cap" : "root", toe, clearance, toe + clearance + pass.Tolerance.IndexOffset.Millimetres, limit?.Citation);
    }
}
