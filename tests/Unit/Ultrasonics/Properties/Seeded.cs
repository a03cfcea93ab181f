using CsCheck;

namespace TechLint.Tests.Unit.Ultrasonics.Properties;

/// <summary>
/// A property of something that jumps, or is found by a search: held on the same cases in every run. What stray seeds have shown beyond them is written
/// down in docs/decisions.md.
/// </summary>
internal static class Seeded
{
    public static void SampleSeeded<T>(this Gen<T> gen, Action<T> holds, int iter)
    {
        for (var index = 0u; index < iter; index++) holds(gen.Generate(new PCG(index + 1), null, out _));
    }

    public static void SampleSeeded<T1, T2>(this Gen<(T1, T2)> gen, Action<T1, T2> holds, int iter) => gen.SampleSeeded(one => holds(one.Item1, one.Item2), iter);

    public static void SampleSeeded<T1, T2, T3>(this Gen<(T1, T2, T3)> gen, Action<T1, T2, T3> holds, int iter) =>
        gen.SampleSeeded(one => holds(one.Item1, one.Item2, one.Item3), iter);
}
