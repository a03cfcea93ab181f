using System.Text.Json;
using FluentAssertions;
using TechLint.Engine;
using TechLint.Reports;
using TechLint.Rules.Findings;
using Xunit;

namespace TechLint.Tests.Unit.Reports;

public sealed class SarifReportTests
{
    [Fact]
    public void A_run_is_written_in_full_and_byte_for_byte() => Sarif(Runs.Run(Runs.Counted(Runs.Coverage))).Should().Be("""
        {
          "$schema": "https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json",
          "version": "2.1.0",
          "runs": [
            {
              "tool": {
                "driver": {
                  "name": "techlint",
                  "version": "0.1.0",
                  "semanticVersion": "0.1.0",
                  "rules": [
                    {
                      "id": "volume-not-covered",
                      "shortDescription": {
                        "text": "Part of the examined volume is seen by no beam."
                      },
                      "fullDescription": {
                        "text": "Part of the examined volume is seen by no beam. A flaw there is missed."
                      },
                      "help": {
                        "text": "A flaw there is missed.\n\nMove the probe or add a beam.\n\nCAUTION",
                        "markdown": "**Why.** A flaw there is missed.\n\n**What to do.** Move the probe or add a beam.\n\n*CAUTION*"
                      },
                      "defaultConfiguration": {
                        "level": "error"
                      },
                      "properties": {
                        "tags": [
                          "coverage"
                        ]
                      }
                    }
                  ]
                }
              },
              "invocations": [
                {
                  "exitCode": 1,
                  "executionSuccessful": true,
                  "properties": {
                    "as-of": "2026-11-24"
                  }
                }
              ],
              "originalUriBaseIds": {
                "WORKSPACE": {
                  "description": {
                    "text": "The root of the workspace: the folder that holds techlint.yaml, or the one that was checked."
                  }
                }
              },
              "columnKind": "unicodeCodePoints",
              "results": [
                {
                  "ruleId": "volume-not-covered",
                  "ruleIndex": 0,
                  "level": "error",
                  "message": {
                    "text": "index offset 26 mm leaves 4.1 % of the weld volume unseen at 25 mm.\nseen 95.9 %: worst at y -3.5..2.0 mm, z 21.0..25.0 mm"
                  },
                  "locations": [
                    {
                      "physicalLocation": {
                        "artifactLocation": {
                          "uri": "techniques/gm%20%C3%BC%231.technique.yaml",
                          "uriBaseId": "WORKSPACE"
                        },
                        "region": {
                          "startLine": 2,
                          "startColumn": 25,
                          "endLine": 2,
                          "endColumn": 30
                        }
                      },
                      "logicalLocations": [
                        {
                          "fullyQualifiedName": "setups/seam/probes/1/index-offset"
                        }
                      ]
                    }
                  ],
                  "relatedLocations": [
                    {
                      "id": 0,
                      "physicalLocation": {
                        "artifactLocation": {
                          "uri": "equipment/w.equipment.yaml",
                          "uriBaseId": "WORKSPACE"
                        },
                        "region": {
                          "startLine": 1,
                          "startColumn": 1,
                          "endLine": 1,
                          "endColumn": 6
                        }
                      },
                      "message": {
                        "text": "the wedge is defined here"
                      }
                    }
                  ],
                  "partialFingerprints": {
                    "ruleAndModelPath/v1": "volume-not-covered@setups/seam/probes/1/index-offset"
                  },
                  "fixes": [
                    {
                      "description": {
                        "text": "Move it to 34 mm"
                      },
                      "artifactChanges": [
                        {
                          "artifactLocation": {
                            "uri": "techniques/gm%20%C3%BC%231.technique.yaml",
                            "uriBaseId": "WORKSPACE"
                          },
                          "replacements": [
                            {
                              "deletedRegion": {
                                "startLine": 2,
                                "startColumn": 25,
                                "endLine": 2,
                                "endColumn": 30
                              },
                              "insertedContent": {
                                "text": "34 mm"
                              }
                            }
                          ]
                        }
                      ],
                      "properties": {
                        "safe": false
                      }
                    }
                  ],
                  "properties": {
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
                    }
                  }
                }
              ]
            }
          ]
        }

        """.Replace("CAUTION", ExplainReport.Caution));

    [Fact]
    public void Waived_and_baselined_findings_are_suppressed_each_in_its_way()
    {
        using var json = JsonDocument.Parse(Sarif(Runs.Run(
            new CheckedFinding(Runs.Coverage, "L. Marchetti", false), new CheckedFinding(Runs.Coverage, null, true), Runs.Counted(Runs.Coverage))));
        var results = json.RootElement.GetProperty("runs")[0].GetProperty("results");
        Kind(results[0]).Should().Be("inSource");
        results[0].GetProperty("suppressions")[0].GetProperty("justification").GetString().Should().Be("Waived by L. Marchetti.");
        Kind(results[1]).Should().Be("external");
        results[2].TryGetProperty("suppressions", out _).Should().BeFalse();

        static string? Kind(JsonElement result) => result.GetProperty("suppressions")[0].GetProperty("kind").GetString();
    }

    [Fact]
    public void Each_result_points_to_its_rule_and_a_rule_without_description_still_has_its_name()
    {
        using var json = JsonDocument.Parse(Sarif(Runs.Run(Runs.Counted(Runs.Coverage), Runs.Counted(Runs.Plain()), Runs.Counted(Runs.Coverage))));
        var run = json.RootElement.GetProperty("runs")[0];
        var rules = run.GetProperty("tool").GetProperty("driver").GetProperty("rules");
        rules.EnumerateArray().Select(rule => rule.GetProperty("id").GetString()).Should().Equal("unknown-key", "volume-not-covered");
        foreach (var result in run.GetProperty("results").EnumerateArray())
        {
            rules[result.GetProperty("ruleIndex").GetInt32()].GetProperty("id").GetString().Should().Be(result.GetProperty("ruleId").GetString());
        }
    }

    [Fact]
    public void A_fingerprint_outlives_a_move_of_lines()
    {
        var moved = Runs.Coverage with { Span = Runs.SpanOf("end") };
        Fingerprint(moved).Should().Be(Fingerprint(Runs.Coverage));
        Fingerprint(Runs.Coverage with { At = "setups/other" }).Should().NotBe(Fingerprint(Runs.Coverage));

        static string Fingerprint(Finding finding)
        {
            using var json = JsonDocument.Parse(Sarif(Runs.Run(Runs.Counted(finding))));
            return json.RootElement.GetProperty("runs")[0].GetProperty("results")[0].GetProperty("partialFingerprints").GetRawText();
        }
    }

    private static string Sarif(CheckRun run) => Runs.Written(output => SarifReport.Write(output, run, Runs.Tool, [Runs.Rule], 1));
}
