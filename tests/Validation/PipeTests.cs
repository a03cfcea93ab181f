using TechLint.Ultrasonics.Quantities;
using Xunit;

namespace TechLint.Tests.Validation;

public sealed class PipeTests
{
    public static TheoryData<string> Sizes => CheckValue.Ids("pipe-size");

    [Theory, MemberData(nameof(Sizes))]
    public void A_pipe_size_in_inches_is_its_size_in_the_metric_table(string id)
    {
        var row = CheckValue.Of(id);
        row.Holds((double)QuantityParser.Parse($"{row.Inputs["inch"]} in")!.Value.Exact);
    }
}
