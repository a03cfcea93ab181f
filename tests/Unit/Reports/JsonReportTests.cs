using System.Text.Json;
using FluentAssertions;
using TechLint.Engine;
using TechLint.Reports;
using TechLint.Rules.Findings;
using Xunit;

namespace TechLint.Tests.Unit.Reports;

public sealed class JsonReportTests
{
    [Fact]
    public void A_run_has_the_promised_keys_in_the_promised_order() => Json(Runs.Run(Runs.Counted(Runs.Coverage))).Should().Be("""
        {
          "format": 1,
          "tool": {
            "name": "techlint",
            "version": "0.1.0"
          },
          "as-of": "2026-11-24",
          "findings": [
            {
              "rule": "volume-not-covered",
              "severity": "error",
              "file": "techniques/gm ü#1.technique.yaml",
              "start": {
                "line": 2,
                "column": 25
              },
              "end": {
                "line": 2,
                "column": 30
              },
              "at": "setups/seam/probes/1/index-offset",
              "message": "index offset 26 mm leaves 4.1 % of the weld volume unseen at 25 mm",
              "evidence": [
                {
                  "name": "covered",
                  "value": 95.9,
                  "unit": "%"
                },
                {
                  "name": "limit",
                  "value": 100,
                  "unit": "%"
                },
                {
                  "name": "thickness",
                  "value": 25,
                  "unit": "mm"
                }
              ],
              "requirement": {
                "set": "iso-13588-level-b",
                "source": "ISO 13588:2019, 8.1",
                "basis": "memory"
              },
              "related": [
                {
                  "file": "equipment/w.equipment.yaml",
                  "start": {
                    "line": 1,
                    "column": 1
                  },
                  "end": {
                    "line": 1,
                    "column": 6
                  },
                  "message": "the wedge is defined here"
                }
              ],
              "fixes": [
                {
                  "title": "Move it to 34 mm",
                  "safe": false,
                  "edits": [
                    {
                      "file": "techniques/gm ü#1.technique.yaml",
                      "start": {
                        "line": 2,
                        "column": 25
                      },
                      "end": {
                        "line": 2,
                        "column": 30
                      },
                      "text": "34 mm"
                    }
                  ]
                }
              ],
              "waived-by": null,
              "baselined": false
            }
          ],
          "summary": {
            "files": 2,
            "errors": 1,
            "warnings": 0,
            "notes": 0,
            "waived": 0,
            "baselined": 0,
            "not-checked": 0,
            "lowered-by-settings": 0,
            "excluded": 0
          }
        }

        """);

    [Fact]
    public void Waivers_and_baseline_are_told_and_what_is_absent_is_empty_or_null()
    {
        using var json = JsonDocument.Parse(Json(Runs.Run(new CheckedFinding(Runs.Plain(), "L. Marchetti", true))));
        var finding = json.RootElement.GetProperty("findings")[0];
        finding.GetProperty("waived-by").GetString().Should().Be("L. Marchetti");
        finding.GetProperty("baselined").GetBoolean().Should().BeTrue();
        finding.GetProperty("requirement").ValueKind.Should().Be(JsonValueKind.Null);
        finding.GetProperty("at").GetString().Should().BeEmpty();
        finding.GetProperty("evidence").GetArrayLength().Should().Be(0);
        finding.GetProperty("message").GetString().Should().Be("no key is named \"technique\"");
    }

    [Theory]
    [InlineData("0.00000012", "0.00000012")]
    [InlineData("100.000", "100")]
    [InlineData("-0.0", "0")]
    [InlineData("12345678901234567890.5", "12345678901234567890.5")]
    public void Numbers_have_no_exponent_and_no_trailing_zeros(string number, string shown)
    {
        var evidence = new Evidence("n", decimal.Parse(number, System.Globalization.CultureInfo.InvariantCulture), null, "");
        Json(Runs.Run(Runs.Counted(Runs.Plain() with { Evidence = [evidence] }))).Should().Contain($"\"value\": {shown},");
    }

    [Fact]
    public void Any_text_that_a_file_can_hold_is_written_as_valid_json()
    {
        const string nasty = "\ud800 \udc00 \u0001 \" \\ \u2028 🔧 </script>";
        var finding = Runs.Plain() with { Message = nasty, Evidence = [new Evidence("t", null, nasty, "")] };
        using var json = JsonDocument.Parse(Json(Runs.Run(Runs.Counted(finding))));
        json.RootElement.GetProperty("findings")[0].GetProperty("message").GetString().Should().Contain("🔧 </script>");
    }

    private static string Json(CheckRun run) => Runs.Written(output => JsonReport.Write(output, run, Runs.Tool));
}
