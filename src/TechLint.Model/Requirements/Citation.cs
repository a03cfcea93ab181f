namespace TechLint.Model.Requirements;

/// <summary>How sure a limit is.</summary>
public enum Basis
{
    /// <summary>Seen in the source named.</summary>
    Published,

    /// <summary>Believed; to be confirmed against the owner's copy.</summary>
    Memory,

    CommonPractice,

    Owner,
}

/// <summary>Where a limit comes from.</summary>
/// <param name="Set">The requirement set's id.</param>
/// <param name="Source">Standard, edition, clause.</param>
public sealed record Citation(string Set, string Source, Basis Basis)
{
    public string BasisText => Basis switch
    {
        Basis.Published => "published",
        Basis.Memory => "memory",
        Basis.CommonPractice => "common-practice",
        _ => "owner",
    };
}
