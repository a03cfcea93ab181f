using System.Globalization;
using System.Text;

namespace TechLint.Tests.Benchmarks;

/// <summary>
/// A technique of about so many lines: the penstock's long seams, with a setup of its own for each part of the band of thickness, every key on
/// a line of its own. Sound, and computed in full.
/// </summary>
internal sealed class LongTechnique : IDisposable
{
    private const int LinesOfHead = 80;
    private const int LinesOfSetup = 72;

    /// <param name="lines">Of the file, to within one setup.</param>
    public LongTechnique(int lines)
    {
        Folder = Directory.CreateTempSubdirectory("techlint-benchmark-").FullName;
        foreach (var part in new[] { "equipment", "requirements" })
        {
            Directory.CreateDirectory(System.IO.Path.Combine(Folder, part));
            foreach (var file in Directory.GetFiles(System.IO.Path.Combine(Repository.Samples, part)))
                File.Copy(file, System.IO.Path.Combine(Folder, part, System.IO.Path.GetFileName(file)));
        }

        File.Copy(System.IO.Path.Combine(Repository.Samples, "techlint.yaml"), System.IO.Path.Combine(Folder, "techlint.yaml"));
        Directory.CreateDirectory(System.IO.Path.Combine(Folder, "techniques"));
        Text = Written(Math.Max(1, (lines - LinesOfHead) / LinesOfSetup));
        Lines = Text.Count(c => c == '\n');
        Path = System.IO.Path.Combine(Folder, "techniques", "long.technique.yaml");
        File.WriteAllText(Path, Text);
    }

    public string Folder { get; }

    public string Path { get; }

    public string Text { get; }

    public int Lines { get; }

    public void Dispose() => Directory.Delete(Folder, recursive: true);

    private static string Written(int setups)
    {
        // The sample's own head and tail; its one setup written out once for each part of the band.
        var sample = File.ReadAllText(System.IO.Path.Combine(Repository.Samples, "techniques", "gm-ut-014.technique.yaml"));
        var head = sample[..sample.IndexOf("setups:\n", StringComparison.Ordinal)];
        var tail = sample[sample.IndexOf("references:\n", StringComparison.Ordinal)..];
        var text = new StringBuilder(head).Append("setups:\n");
        for (var index = 0; index < setups; index++)
        {
            text.Append(Setup(index, 18 + (7.0 * index / setups), 18 + (7.0 * (index + 1) / setups)));
        }

        return text.Append('\n').Append(tail).ToString();
    }

    private static string Setup(int index, double from, double to) => string.Create(CultureInfo.InvariantCulture, $$"""
          - id: part-{{index}}
            for:
              thickness:
                from: {{from:0.####}} mm
                to: {{to:0.####}} mm
            frame: frame-four
            positioning-tolerance:
              index-offset: 1 mm
              skew: 2 deg
            probes:
              - {station: 1, probe: pa-5-32, wedge: w-36-flat, side: left, index-offset: 34.00 mm}
              - {station: 2, probe: pa-5-32, wedge: w-36-flat, side: right, index-offset: 34.00 mm}
              - {station: 3, probe: el-5-6, wedge: w-60l, side: left, index-offset: 20 mm}
              - {station: 4, probe: el-5-6, wedge: w-60l, side: right, index-offset: 20 mm}
            beams:
        {{Sector("left", 1)}}{{Sector("right", 2)}}      - id: diffraction
                scan: tofd
                transmit: 3
                receive: 4
                wave: longitudinal
                zone:
                  from: 0 %
                  to: 100 %
                window:
                  before-lateral-wave: 1 us
                  after-back-wall: 1 us
                reference: lateral-wave
              - {id: contact-left, scan: coupling-monitor, from: 1, loss-at-most: 6 dB}
              - {id: contact-right, scan: coupling-monitor, from: 2, loss-at-most: 6 dB}
            acquisition:
              instrument: unit-32-128
              encoder: wheel-12
              start: datum mark at the seam end
              run-on: 50 mm
              run-off: 50 mm
              increment: 1 mm
              speed: 40 mm/s
              pulse-rate: 6 kHz
              averaging: 1
              digitising-rate: 50 MHz
              overlap: 25 mm
              missing-lines:
                at-most: 5 %
                adjacent-at-most: 1

        """).Replace("\n  - id", "\n  - id", StringComparison.Ordinal);

    private static string Sector(string side, int station) => string.Create(CultureInfo.InvariantCulture, $$"""
              - id: sector-{{side}}
                scan: sectorial
                from: {{station}}
                wave: transverse
                angles:
                  from: 40 deg
                  to: 72 deg
                  step: 1 deg
                aperture:
                  first: 1
                  count: 16
                focus: none
                legs: [1, 2]
                window:
                  from: 0 mm
                  to: 170 mm
                reference: side-drilled

        """);
}
