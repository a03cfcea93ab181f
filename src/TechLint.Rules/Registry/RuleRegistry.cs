using System.Collections.Frozen;
using System.Collections.Immutable;
using TechLint.Rules.Beam;
using TechLint.Rules.Calibration;
using TechLint.Rules.Coverage;
using TechLint.Rules.Document;
using TechLint.Rules.Fit;
using TechLint.Rules.References;
using TechLint.Rules.Run;
using TechLint.Rules.Waivers;
using TechLint.Rules.Workspace;

namespace TechLint.Rules.Registry;

/// <summary>Every rule there is, by family. A rule that is not in this list does not exist.</summary>
public static class RuleRegistry
{
    public static readonly BrokenSettings BrokenSettings = new();
    public static readonly EncodingUnreadable EncodingUnreadable = new();
    public static readonly InternalError InternalError = new();
    public static readonly WaiverUnknownRule WaiverUnknownRule = new();
    public static readonly WaiverUnused WaiverUnused = new();
    public static readonly WaiverExpired WaiverExpired = new();
    public static readonly WaiverUnapproved WaiverUnapproved = new();
    public static readonly WaiverForbidden WaiverForbidden = new();

    public static ImmutableArray<Rule> All { get; } =
    [
        // document
        new YamlSyntax(), new UnknownKey(), new MissingKey(), new WrongValue(), new UnitMissing(), new UnitWrongKind(), new RangeReversed(),
        new ValueImplausible(), new DuplicateId(), new DuplicateKey(),

        // references
        new UnknownReference(), new UnusedDefinition(), new LibraryNotFound(), new LibraryOutsideWorkspace(), new WedgeDoesNotFitProbe(), new SetRedefined(),

        // fit
        new ProbeCountOverDiameterLimit(), new OrientationNotSupported(), new StationUnknown(), new ProbeOnCap(), new IndexOffsetOutOfReach(),
        new IndexOffsetAgainstThickness(), new ThicknessWithoutSetup(), new DiameterWithoutSetup(), new SetupsOverlap(), new StandardOutOfScope(),

        // beam
        new AngleNotRefracted(), new ExitOutsideWedge(), new ApertureOutsideArray(),

        // coverage
        new VolumeNotCovered(),

        // calibration
        new ReferenceMissing(), new ReferenceDoesNotSpan(),

        // waivers
        WaiverUnknownRule, WaiverUnused, WaiverExpired, WaiverUnapproved, WaiverForbidden,

        // run
        new SetContradiction(), new SetUnknownLimit(), new LimitReached(), EncodingUnreadable, InternalError, new NotChecked(),

        // workspace
        BrokenSettings,
    ];

    private static readonly FrozenDictionary<string, Rule> ByName = All.ToFrozenDictionary(rule => rule.Name, StringComparer.Ordinal);

    public static ImmutableArray<string> Names { get; } = [.. All.Select(rule => rule.Name).Order(StringComparer.Ordinal)];

    public static ImmutableArray<TechniqueRule> OfTechniques { get; } = [.. All.OfType<TechniqueRule>()];

    public static ImmutableArray<LibraryRule> OfLibraries { get; } = [.. All.OfType<LibraryRule>()];

    public static ImmutableArray<RequirementSetRule> OfRequirementSets { get; } = [.. All.OfType<RequirementSetRule>()];

    public static Rule? Find(string name) => ByName.GetValueOrDefault(name);
}
