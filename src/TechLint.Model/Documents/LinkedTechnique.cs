using System.Collections.Immutable;
using TechLint.Model.Equipment;
using TechLint.Model.Examinations;
using TechLint.Model.Requirements;
using TechLint.Model.Techniques;
using TechLint.Syntax;

namespace TechLint.Model.Documents;

/// <summary>A technique with everything that it names, found or not.</summary>
/// <param name="Problems">Of the technique's own text and shape.</param>
/// <param name="RequirementNames">Every set that judges it: its own, or the workspace's where it names none, and the caller's.</param>
public sealed record LinkedTechnique(
    Technique Technique, ImmutableArray<Problem> Problems, EquipmentPool Equipment, ImmutableArray<string> RequirementNames,
    RequirementSets Requirements, ImmutableArray<ExaminationLink> Examinations);
