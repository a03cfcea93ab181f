using System.Collections.Immutable;
using TechLint.Ultrasonics.Quantities;

namespace TechLint.Ultrasonics.Delays;

/// <summary>
/// When each active element of a law fires, so that all of them arrive together: <c>delay = T_max − T_element</c>, T the least time
/// (Fermat) from the element's centre through sole, couplant and part to the law's focal point, or without a focus to one wave front of the law's angle. The
/// element with the longest way fires first, at 0. Worked out when asked for.
/// </summary>
/// <remarks>
/// The focal point lies on the law's own ray, at the stated path, depth or vertical line; beyond the first leg the ways bounce where the law bounces, on a
/// curved wall by the true mirror law. Left out: the element's size (its centre counts), and the instrument's own steps of delay. Valid while the sole
/// is taken as going on beyond its edges. Source: Fermat's principle; sum and steering are held to numerical minimisers and to
/// brute force in tests/Validation.
/// </remarks>
public sealed class FocalLaw
{
    private readonly Lazy<(ImmutableArray<ElementDelay> Elements, string? NotComputed)> work;

    internal FocalLaw(Func<(ImmutableArray<ElementDelay> Elements, string? NotComputed)> work) => this.work = new(work);

    /// <summary>In order of element number; empty where not computed.</summary>
    public ImmutableArray<ElementDelay> Elements => work.Value.Elements;

    /// <summary>Why there are none, or null.</summary>
    public string? NotComputed => work.Value.NotComputed;
}

/// <summary>One element's delay after the one that fires first.</summary>
/// <param name="Element">Counted from 1 over the whole probe.</param>
/// <param name="Delay">0 for the earliest.</param>
public readonly record struct ElementDelay(int Element, Duration Delay);
