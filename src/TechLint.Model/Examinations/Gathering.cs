using TechLint.Model.Binding;
using TechLint.Syntax;
using TechLint.Ultrasonics.Examinations;
using TechLint.Ultrasonics.Quantities;

namespace TechLint.Model.Examinations;

/// <summary>Why an examination cannot be worked out.</summary>
/// <param name="Sentence">For the reader; null where something broken has been reported already, so that no one needs to hear of it again.</param>
public sealed record Obstacle(string? Sentence, TextSpan Span, string Path)
{
    public static Obstacle Reported(TextSpan span, string path) => new(null, span, path);
}

/// <summary>Collects values that must all be there; the first that is not becomes the obstacle.</summary>
internal sealed class Gathering
{
    public Obstacle? Obstacle { get; private set; }

    public bool Failed => Obstacle is not null;

    public void Stop(Obstacle obstacle) => Obstacle ??= obstacle;

    public T Need<T>(Bound<T> value, string whatFor)
    {
        if (value.TryGet(out var known)) return known;
        var key = value.Path[(value.Path.LastIndexOf('/') + 1)..];
        Stop(value.IsBroken
            ? Obstacle.Reported(value.Span, value.Path)
            : new Obstacle($"{whatFor} needs {key}, which is not stated", value.Span, value.Path));
        return default!;
    }

    /// <summary>An optional value: broken stops, missing gives the fallback.</summary>
    public T Allow<T>(Bound<T> value, T fallback)
    {
        if (value.IsBroken) Stop(Obstacle.Reported(value.Span, value.Path));
        return value.TryGet(out var known) ? known : fallback;
    }

    public Length NeedLength(Bound<Quantity> value, string whatFor) => new(Need(value, whatFor).InBaseOrZero());

    public Length AllowLength(Bound<Quantity> value) => Allow(value.Select(static quantity => new Length(quantity.InBase)), default);

    public T? AllowNull<T>(Bound<Quantity> value, Func<double, T> make) where T : struct
    {
        if (value.IsBroken) Stop(Obstacle.Reported(value.Span, value.Path));
        return value.IsKnown ? make(value.Value.InBase) : null;
    }

    public Depth AllowDepth(Bound<Quantity> value, Depth fallback) => Allow(value.Select(ToDepth), fallback);

    public static Depth ToDepth(Quantity quantity) => new(quantity.InBase, quantity.Kind == QuantityKind.Share);
}

internal static class QuantityExtensions
{
    /// <summary>A default quantity (nothing was read) has no unit to convert by.</summary>
    public static double InBaseOrZero(this Quantity quantity) => quantity.Unit is null ? 0 : quantity.InBase;
}
