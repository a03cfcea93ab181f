using System.Globalization;

namespace TechLint.Tests.Benchmarks;

/// <summary>
/// A workspace of girth-weld techniques beside the samples' equipment, the same on every machine for the same seed: walls, diameters, offsets and
/// names differ from file to file. Most are as an author would hand them in; the rest have a probe too far from the weld.
/// </summary>
internal sealed class GeneratedRepository : IDisposable
{
    private static readonly string[] Diameters = ["273 mm", "323.9 mm", "355.6 mm", "406.4 mm", "508 mm", "610 mm"];

    private GeneratedRepository(string folder, IReadOnlyList<string> files)
    {
        Folder = folder;
        Files = files;
    }

    public string Folder { get; }

    /// <summary>The techniques, relative to the folder.</summary>
    public IReadOnlyList<string> Files { get; }

    /// <param name="offShare">The share of techniques with a badly placed probe.</param>
    public static GeneratedRepository Make(int count, double offShare = 0.1, int seed = 20261124)
    {
        var folder = Directory.CreateTempSubdirectory("techlint-benchmark-").FullName;
        foreach (var part in new[] { "equipment", "requirements" })
        {
            Directory.CreateDirectory(Path.Combine(folder, part));
            foreach (var file in Directory.GetFiles(Path.Combine(Repository.Samples, part))) File.Copy(file, Path.Combine(folder, part, Path.GetFileName(file)));
        }

        File.Copy(Path.Combine(Repository.Samples, "techlint.yaml"), Path.Combine(folder, "techlint.yaml"));
        Directory.CreateDirectory(Path.Combine(folder, "techniques"));
        var random = new Random(seed);
        var files = new string[count];
        for (var i = 0; i < count; i++)
        {
            files[i] = string.Create(CultureInfo.InvariantCulture, $"techniques/gen-{i:0000}.technique.yaml");
            File.WriteAllText(Path.Combine(folder, files[i]), Text(i, random, random.NextDouble() < offShare));
        }

        return new GeneratedRepository(folder, files);
    }

    public void Dispose() => Directory.Delete(Folder, recursive: true);

    private static string Text(int number, Random random, bool isOff)
    {
        var wall = Math.Round(10 + (random.NextDouble() * 6), 1);
        var offset = Math.Round(1.55 * wall, 1);
        var off = isOff ? Math.Round(offset + 75 + (random.NextDouble() * 15), 1) : offset;
        var diameter = Diameters[random.Next(Diameters.Length)];
        return string.Create(CultureInfo.InvariantCulture, $$$"""
            technique: GEN-{{{number:0000}}}
            title: Girth weld {{{number}}}, {{{diameter}}} x {{{wall}}} mm
            revision: A
            date: 2026-10-05
            status: approved
            prepared-by: {name: R. Odhiambo, qualification: {methods: [UT-PA, UT-TOFD], level: 3, valid-until: 2028-04-30}}
            reviewed-by: {name: L. Marchetti, qualification: {methods: [UT-PA, UT-TOFD], level: 3, valid-until: 2027-01-31}, date: 2026-10-12}
            approved-by: {name: I. Brandvold, qualification: {methods: [UT-PA, UT-TOFD], level: 3, valid-until: 2027-09-30}, date: 2026-10-14}
            requirements: [iso-13588-level-b, iso-10863-level-b, glenmarrow-owner]
            equipment: [../equipment/workshop.equipment.yaml]

            component:
              form: pipe
              material: carbon-steel
              thickness: {{{wall}}} mm
              outside-diameter: {{{diameter}}}
              surface-temperature: {from: 5 degC, to: 40 degC}
              scanning-surface: {side: outside, roughness: 6.3 um, clear-width: {left: 150 mm, right: 150 mm}}

            weld:
              joint: butt
              orientation: circumferential
              process: manual-metal-arc
              preparation: {shape: single-v, included-angle: 60 deg, root-face: 1.5 mm, root-gap: 2 mm, misalignment-at-most: 1.5 mm}
              cap: {width: 18 mm, height: 2 mm}
              root: {width: 6 mm, height: 1.5 mm}
              heat-affected-zone: 4 mm

            examination:
              volume: {beside-weld: 10 mm, depth: {from: 0 %, to: 100 %}}
              sides: both
              stage: after final heat treatment

            setups:
              - id: girth
                for: {thickness: {{{wall}}} mm}
                frame: frame-four
                positioning-tolerance: {index-offset: 1 mm, skew: 2 deg}
                probes:
                  - {station: 1, probe: pa-5-32, wedge: w-36-flat, side: left, index-offset: {{{off}}} mm}
                  - {station: 2, probe: pa-5-32, wedge: w-36-flat, side: right, index-offset: {{{offset}}} mm}
                  - {station: 3, probe: el-10-3, wedge: w-70l, side: left, index-offset: 14 mm}
                  - {station: 4, probe: el-10-3, wedge: w-70l, side: right, index-offset: 14 mm}
                beams:
                  - {id: sector-left, scan: sectorial, from: 1, wave: transverse, angles: {from: 40 deg, to: 72 deg, step: 1 deg},
                     aperture: {first: 1, count: 16}, focus: none, legs: [1, 2], window: {from: 0 mm, to: 100 mm}, reference: holes}
                  - {id: sector-right, scan: sectorial, from: 2, wave: transverse, angles: {from: 40 deg, to: 72 deg, step: 1 deg},
                     aperture: {first: 1, count: 16}, focus: none, legs: [1, 2], window: {from: 0 mm, to: 100 mm}, reference: holes}
                  - {id: diffraction, scan: tofd, transmit: 3, receive: 4, wave: longitudinal, zone: {from: 0 %, to: 100 %},
                     window: {before-lateral-wave: 1 us, after-back-wall: 1 us}, reference: lateral-wave}
                acquisition:
                  instrument: unit-32-128
                  encoder: wheel-12
                  start: 12 o'clock, marked on the pipe
                  increment: 1 mm
                  speed: 40 mm/s
                  pulse-rate: 6 kHz
                  averaging: 1
                  digitising-rate: 50 MHz
                  overlap: 25 mm
                  missing-lines: {at-most: 5 %, adjacent-at-most: 1}

            references:
              - {id: holes, method: time-corrected-gain, block: block-pipe-324, reflectors: [sdh-3, sdh-6, sdh-10], level: 80 %, scanning-gain: 6 dB}
              - {id: lateral-wave, method: lateral-wave, level: 60 %}

            evaluation: {recording-level: 20 %, acceptance: iso-19285 level 2}
            records:    {raw-data: all scans, retain: 10 years}
            couplant: gel

            """);
    }
}
