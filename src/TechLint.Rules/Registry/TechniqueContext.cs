using TechLint.Model.Documents;
using TechLint.Model.Equipment;
using TechLint.Model.Examinations;
using TechLint.Model.Requirements;
using TechLint.Model.Techniques;
using TechLint.Rules.Coverage;
using TechLint.Rules.Findings;
using TechLint.Ultrasonics.Examinations;
using TechLint.Ultrasonics.Studies;

namespace TechLint.Rules.Registry;

/// <summary>What a rule may look at while it judges one technique.</summary>
/// <param name="linked">The technique and all that it names.</param>
/// <param name="studyOf">The study of an examination, kept by the engine.</param>
/// <param name="asOf">The date to judge by.</param>
public sealed class TechniqueContext(LinkedTechnique linked, Func<Examination, Study> studyOf, DateOnly asOf, FindingSink sink)
{
    private readonly Dictionary<ExaminationLink, CoverageVerdict> verdicts = new(ReferenceEqualityComparer.Instance);

    public LinkedTechnique Linked { get; } = linked;

    public Technique Technique => Linked.Technique;

    public EquipmentPool Equipment => Linked.Equipment;

    public RequirementSets Requirements => Linked.Requirements;

    public DateOnly AsOf { get; } = asOf;

    public FindingSink Sink { get; } = sink;

    public Study? StudyOf(ExaminationLink link) => link.Examination is { } examination ? studyOf(examination) : null;

    /// <summary>Whether the setups see the volume, worked out once for all rules that ask.</summary>
    public CoverageVerdict VerdictOf(ExaminationLink link)
    {
        if (!verdicts.TryGetValue(link, out var verdict)) verdicts.Add(link, verdict = CoverageVerdict.Of(this, link));
        return verdict;
    }
}
