using TechLint.Tests.Unit.Model;

namespace TechLint.Tests.Unit.Syntax;

/// <summary>Sound texts of invented data.</summary>
internal static class Texts
{
    public const string Technique = ShapeSamples.Technique;

    public const string Equipment = ShapeSamples.Equipment;

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
