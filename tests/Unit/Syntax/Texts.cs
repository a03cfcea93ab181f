namespace TechLint.Tests.Unit.Syntax;

/// <summary>Sound texts of invented data.</summary>
internal static class Texts
{
    public const string Technique = """
technique: GM-UT-014
title: Penstock shell, longitudinal seams 18 to 25 mm
revision: B
date: 2026-10-05
status: submitted                      # draft | submitted | approved | withdrawn
prepared-by: {name: R. Odhiambo, qualification: {methods: [UT-PA, UT-TOFD], level: 3, valid-until: 2028-04-30}}
reviewed-by: {name: L. Marchetti, qualification: {methods: [UT-PA, UT-TOFD], level: 3, valid-until: 2027-01-31}, date: 2026-10-12}
requirements: [iso-13588-level-b, iso-10863-level-b, glenmarrow-owner]
equipment: [../equipment/workshop.equipment.yaml]

component:
  form: pipe                           # plate | pipe | vessel | tank | cone
  material: carbon-steel               # or {left: ..., right: ...}
  thickness: {from: 18 mm, to: 25 mm}  # or {left: ..., right: ...}
  outside-diameter: {from: 1400 mm, to: 1450 mm}
  surface-temperature: {from: 5 degC, to: 40 degC}
  scanning-surface: {side: outside, roughness: 6.3 um, clear-width: {left: 180 mm, right: 180 mm}}   # from the centreline

weld:
  joint: butt                          # butt | tee | nozzle | corner | lap
  orientation: longitudinal            # longitudinal | circumferential | helical
  process: submerged-arc
  length: 6 m
  preparation: {shape: double-v, outer: {included-angle: 60 deg, depth: 50 %}, inner: {included-angle: 60 deg},
                root-face: 4 mm, root-gap: 0 mm, misalignment-at-most: 1.5 mm}
  cap: {width: 22 mm, height: 2 mm}
  root: {width: 18 mm, height: 2 mm}
  heat-affected-zone: 5 mm

examination:
  volume: {beside-weld: 10 mm, depth: {from: 0 %, to: 100 %}}
  sides: both                          # both | left | right, with `access: why` when one-sided
  stage: after final heat treatment

setups:
  - id: seam
    for: {thickness: {from: 18 mm, to: 25 mm}}
    frame: frame-four
    positioning-tolerance: {index-offset: 1 mm, skew: 2 deg}
    probes:
      - {station: 1, probe: pa-5-32, wedge: w-36-flat, side: left,  index-offset: 26 mm}
      - {station: 2, probe: pa-5-32, wedge: w-36-flat, side: right, index-offset: 26 mm}
      - {station: 3, probe: el-5-6,  wedge: w-60l,     side: left,  index-offset: 18 mm}
      - {station: 4, probe: el-5-6,  wedge: w-60l,     side: right, index-offset: 18 mm}
    beams:
      - {id: sector-left,  scan: sectorial, from: 1, wave: transverse, angles: {from: 40 deg, to: 72 deg, step: 1 deg},
         aperture: {first: 1, count: 16}, focus: {path: 60 mm}, legs: [1, 2], window: {from: 0 mm, to: 170 mm}, reference: side-drilled}
      - {id: sector-right, scan: sectorial, from: 2, wave: transverse, angles: {from: 40 deg, to: 72 deg, step: 1 deg},
         aperture: {first: 1, count: 16}, focus: {path: 60 mm}, legs: [1, 2], window: {from: 0 mm, to: 170 mm}, reference: side-drilled}
      - {id: diffraction,  scan: tofd, transmit: 3, receive: 4, wave: longitudinal, zone: {from: 0 %, to: 100 %},
         window: {before-lateral-wave: 1 us, after-back-wall: 1 us}, reference: lateral-wave}
      - {id: contact-left,  scan: coupling-monitor, from: 1, loss-at-most: 6 dB}
      - {id: contact-right, scan: coupling-monitor, from: 2, loss-at-most: 6 dB}
    acquisition:
      instrument: unit-32-128
      encoder: wheel-12
      start: datum mark at the seam end
      run-on: 50 mm
      run-off: 50 mm
      increment: 1 mm
      speed: 50 mm/s
      pulse-rate: 6 kHz
      averaging: 1
      digitising-rate: 100 MHz
      overlap: 25 mm
      missing-lines: {at-most: 5 %, adjacent-at-most: 1}

references:
  - {id: side-drilled, method: time-corrected-gain, block: block-22, reflectors: [sdh-6, sdh-11, sdh-17], level: 80 %, scanning-gain: 6 dB}
  - {id: lateral-wave, method: lateral-wave, level: 60 %}

checks:
  velocity-and-delay: {block: block-22, every: 8 h, tolerance: 2 %}
  sensitivity:        {block: block-22, every: 4 h, tolerance: 4 dB}
  encoder:            {over: 500 mm, every: 8 h, tolerance: 1 %}
  instrument:         {valid-until: 2027-06-30}
  transfer:           {measured: each component, at-most: 12 dB}

evaluation: {recording-level: 20 %, acceptance: iso-19285 level 2, sizing: "tip diffraction where resolved, else 6 dB drop"}
records:    {raw-data: all scans, retain: 10 years}
couplant: gel

waivers:
  - {rule: grating-lobe, at: setups/seam/beams/sector-left, reason: "Shown harmless on block-22, report GM-Q-031",
     approved-by: L. Marchetti, until: 2027-03-31}
""";

    public const string Equipment = """
equipment: workshop
probes:
  - {id: pa-5-32, kind: phased-array, frequency: 5 MHz, bandwidth: 70 %, elements: 32, pitch: 0.5 mm, gap: 0.05 mm, elevation: 10 mm}
  - {id: el-5-6, kind: single-element, frequency: 5 MHz, pulse-length: 0.3 us, shape: round, diameter: 6 mm}
wedges:
  - {id: w-36-flat, fits: [pa-5-32], material: cross-linked-polystyrene, angle: 36 deg,
     first-element: {height: 5 mm, behind-front: 28 mm}, length: 34 mm, width: 24 mm, contour: flat,
     refracts: {wave: transverse, from: 38 deg, to: 72 deg}}
  - {id: w-60l, fits: [el-5-6], material: cross-linked-polystyrene, refracted-angle: 60 deg, wave: longitudinal,
     index-point: {behind-front: 7 mm}, path: 8 mm, length: 18 mm, width: 14 mm, contour: flat}
  - {id: w-60l-406, fits: [el-5-6], material: cross-linked-polystyrene, refracted-angle: 60 deg, wave: longitudinal,
     index-point: {behind-front: 7 mm}, path: 8 mm, length: 18 mm, width: 14 mm,
     contour: {outside-diameter: 406.4 mm, curved: along-beam}}          # along-beam | across-beam
frames:
  - {id: frame-four, encoder: wheel-12, index-offset: {from: 0 mm, to: 120 mm},
     stations: [{station: 1, along: 0 mm}, {station: 2, along: 0 mm}, {station: 3, along: 70 mm}, {station: 4, along: 70 mm}],
     limits: [{orientation: longitudinal, probes: 4, outside-diameter: {from: 180 mm}},
              {orientation: circumferential, probes: 2, outside-diameter: {from: 88.9 mm}},
              {orientation: circumferential, probes: 4, outside-diameter: {from: 323.9 mm}}, {form: plate, probes: 4}]}
instruments:
  - {id: unit-32-128, pulsers: 32, channels: 128, beams-at-most: 1024, pulse-rate-at-most: 20 kHz,
     digitising-rate: 100 MHz, data-rate-at-most: 30 MB/s, calibration: {valid-until: 2027-06-30}}
encoders:
  - {id: wheel-12, resolution: 12 steps/mm}
materials:                             # beside the built-in ones; a wedge may also state its own `velocity`
  - {id: penstock-steel, longitudinal: 5920 m/s, transverse: 3240 m/s, density: 7800 kg/m3}
blocks:
  - {id: block-22, material: carbon-steel, form: plate, thickness: 22 mm,
     reflectors: [{id: sdh-6, kind: side-drilled-hole, diameter: 3 mm, depth: 6 mm},
                  {id: sdh-11, kind: side-drilled-hole, diameter: 3 mm, depth: 11 mm},
                  {id: sdh-17, kind: side-drilled-hole, diameter: 3 mm, depth: 17 mm}]}
  - {id: block-pipe, material: carbon-steel, form: pipe, outside-diameter: 323.9 mm, thickness: 12.7 mm,
     reflectors: [{id: notch-in, kind: notch, surface: inside, depth: 10 %, width: 1 mm, length: 25 mm, along: weld}]}
""";

    /// <summary>Small sound texts, one or two constructs each.</summary>
    public static readonly string[] Sound =
    [
        "",
        "\n\n",
        "# only a comment\n",
        "---\n",
        "a",
        "a: b",
        "a: b\n",
        "a:\nb:\n",
        "a: \n\n# c\n\nb: 1 # d\n",
        "- a\n- b\n",
        "-\n- \n-   # c\n- x\n",
        "- - a\n  - b\n- - - c\n",
        "a:\n- b\n- c\nd: e\n",
        "a:\n  - b\n  -\n    c: d\n    e: f\n  - g: h\n    i: j\n",
        "a: {}\nb: []\nc: {d: {}, e: [[], {}]}\n",
        "a: {b: c, d, e: , f: \"g\", \"h\": 'i', \"j\":k}\n",
        "a: [b: c, d, {e: f}, [g]]\n",
        "a: [b, c,]\nd: {e: f,}\n",
        "a: {b: c,\n    d: e,\n    # between\n    f: [1,\n        2]}   # behind\ng: h\n",
        "a:\n  {b: c,\n  d: e\n  }\nf: g\n",
        "a: plain text that\n  runs on\n\n  and on\nb: c\n",
        "a:\n  plain below\n  its key\nb: c\n",
        "a: \"double \\\"quoted\\\" \\u00e9\\n\"\nb: 'single ''quoted'' text'\n",
        "a: \"over\n  two lines\"\nb: 'over\n\n  three'\n",
        "a: |\n  one\n    two\n\n  three\n\nb: >-\n  folded\n  text\n\n  more\n# c\nc: |2\n    kept\nd: |+ # header\n  x\n\n\ne: f\n",
        "- |\n  one\n- >\n  two\n- a: |\n    three\n  b: c\n",
        "a: &x {b: c}\nd: *x\ne:\n  <<: *x\n  f: g\nh: [*x, *x]\n",
        "a: &x\n  b: c\nd: &y\n- e\nf: &z g\nh: *z\n",
        "&k a: &v b\nc: !!str d\ne: !local {f: g}\nh: !!seq\n- i\n",
        "a: &x\nb: c\n",
        "a:\n  &x\n  b: c\nd: *x\n",
        "a: !t &x\n  b: c\n",
        "- &a x: 1\n- &b\n  y: 2\n- &c z\n",
        "{a: b, c: [d]}\n",
        "[a, b]\n",
        "--- {a: b}\n",
        "--- text\n",
        "---\na: b\n...\n",
        "# c\n---\na: b\n",
        "%YAML 1.2\n---\na: b\n",
        "\uFEFFa: b\nc: d\n",
        "a: \u00e9\U0001F600b\n\U0001F600: {c\U0001F600: d}\ne: f\n",
        "a:\tb\nc: {d:\te}\n-: f\n",
        "a: b\rc: d\r- e: f\r".Replace("\r- e: f", "", StringComparison.Ordinal),
        "a: http://x.example/y?z=1#part\nb: 12:30\nc: a#b # real\n",
        "a: -1\nb: -10 dB\nc: ?x\nd: :y\ne: - \n".Replace("e: - \n", "", StringComparison.Ordinal),
        "a: [-1, -10 dB, 1 1/2 in]\n",
        "a b: c d\n'e f': g\n\"h i\" : j\n",
        "a : b\nc  :  d\n",
        "a:\n\n    b:\n\n        c: d\n\n    e: f\n",
        "? a\n: b\n? c\n",
        "a: 5 MHz   \nb: x\t\n",
        "a: {b: c}\n#end",
        "a:\n  - {b: c,\n     d: e}\n  - {f: g}\n",
        "a: {\n  b: c\n}\n",
        "a: [\n  b,\n  c\n]\nd: e\n",
        "a: \"x # y\"\nb: 'x # y'  # z\n",
        "a: {b: \"c, d: e\", f: '}'}\n",
        "a: b\n  # deeper comment\nc: d\n",
        "a:\n# shallow comment\n  b: c\n",
        "a: |\n  # not a comment\n  \"not a quote\n  {nor: a brace\nb: c\n",
        "a: it's \"quoted\" inside\nb: 6\" pipe\nc: {d: 6\" pipe, e: it's}\n",
    ];
}
