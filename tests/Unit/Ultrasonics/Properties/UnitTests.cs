using System.Globalization;
using CsCheck;
using FluentAssertions;
using TechLint.Engine;
using TechLint.Model.Documents;
using TechLint.Model.Shape;
using TechLint.Tests.Unit.Rules;
using TechLint.Ultrasonics.Examinations;
using TechLint.Ultrasonics.Quantities;
using TechLint.Ultrasonics.Studies;
using Xunit;

namespace TechLint.Tests.Unit.Ultrasonics.Properties;

/// <summary>A file in inches says what the same file in millimetres says: from the text to the last digit of the inputs, and so of all that follows.</summary>
public sealed class UnitTests
{
    private const string Path = "floor.technique.yaml";

    /// <summary>16ths of an inch are finite decimals of a millimetre: 1.5875 mm.</summary>
    private const decimal Sixteenth = 1.5875m;

    [Fact]
    public void An_inch_file_is_the_metric_file() => Gen.Select(Gen.Int[6, 14], Gen.Int[9, 16], Gen.Int[4, 9], Gen.Int[40, 90], Gen.Int[0, 1]).Sample(
        (wall, offset, beside, window, tolerance) =>
        {
            var (metric, inches) = (Read(Millimetres), Read(Inches));
            metric.Should().NotBeNull();
            inches.Should().Be(metric);
            metric!.Thickness.From.Should().Be(new Length((double)(wall * Sixteenth)));

            Examination? Read(Func<int, string> length)
            {
                var text = FixtureRun.Base().Read(Path).Source!.Text
                    .Replace("thickness: 10 mm", $"thickness: {length(wall)}", StringComparison.Ordinal)
                    .Replace("index-offset: 16 mm", $"index-offset: {length(offset)}", StringComparison.Ordinal)
                    .Replace("beside-weld: 10 mm", $"beside-weld: {length(beside)}", StringComparison.Ordinal)
                    .Replace("to: 80 mm", $"to: {length(window)}", StringComparison.Ordinal)
                    .Replace("index-offset: 1 mm", $"index-offset: {length(tolerance)}", StringComparison.Ordinal);
                return ExaminationOf(text);
            }
        },
        iter: 100);

    [Fact]
    public void An_inch_file_is_covered_as_the_metric_file_is()
    {
        var metric = new Study(ExaminationOf(FixtureRun.Base().Read(Path).Source!.Text.Replace("thickness: 10 mm", "thickness: 9.525 mm", StringComparison.Ordinal))!);
        var inches = new Study(ExaminationOf(FixtureRun.Base().Read(Path).Source!.Text.Replace("thickness: 10 mm", "thickness: 3/8 in", StringComparison.Ordinal))!);
        inches.Coverage.Result.Volume.Should().Be(metric.Coverage.Result.Volume);
        inches.Coverage.Result.NotComputed.Should().BeNull();
    }

    private static Examination? ExaminationOf(string text)
    {
        var snapshot = Snapshot.Open(FixtureRun.Base().With(Path, text), WorkspaceOptions.For(FixtureRun.Day));
        return TechniqueLinker.Link(BoundDocument.Of(snapshot.TreeOf(Path)!), snapshot).Examinations.Single().Examination;
    }

    private static string Millimetres(int sixteenths) => string.Create(CultureInfo.InvariantCulture, $"{sixteenths * Sixteenth} mm");

    private static string Inches(int sixteenths) => sixteenths % 16 == 0 ? $"{sixteenths / 16} in"
        : sixteenths > 16 ? $"{sixteenths / 16} {sixteenths % 16}/16 in"
        : $"{sixteenths}/16 in";
}
