using TechLint.Tests.Unit.Ultrasonics;
using TechLint.Ultrasonics.Contact;
using TechLint.Ultrasonics.Examinations;
using TechLint.Ultrasonics.Quantities;
using Xunit;

namespace TechLint.Tests.Validation;

public sealed class ContactTests
{
    public static TheoryData<string> Gaps => CheckValue.Ids("contact-gap");

    [Theory, MemberData(nameof(Gaps))]
    public void A_flat_sole_s_gap_agrees_in_either_direction(string id)
    {
        var row = CheckValue.Of(id);
        var diameter = new Length(row["od"]);
        row.Holds(ContactGap.Of(Curvature.AcrossWeld, diameter, Given.ArrayWedge with { Length = new Length(row["a"]) }).Millimetres);
        row.Holds(ContactGap.Of(Curvature.AlongWeld, diameter, Given.ArrayWedge with { Width = new Length(row["a"]) }).Millimetres);
    }
}
