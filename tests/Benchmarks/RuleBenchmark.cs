using TechLint.Model.Documents;
using TechLint.Rules.Findings;
using TechLint.Rules.Registry;
using TechLint.Syntax;

namespace TechLint.Tests.Benchmarks;

/// <summary>
/// Where the time of one check goes. Whoever asks a study first pays for it: the rules run in the order of the registry, as in a check.
/// </summary>
internal static class RuleBenchmark
{
    private const int Rounds = 30;

    public static void Run()
    {
        Tell(Repository.Samples, "techniques/gm-ut-021.technique.yaml");
        using var generated = GeneratedRepository.Make(1, offShare: 1);
        Tell(generated.Folder, generated.Files[0]);
    }

    private static void Tell(string folder, string file)
    {
        var text = File.ReadAllText(Path.Combine(folder, file));
        var times = new SortedDictionary<string, double[]>(StringComparer.Ordinal);
        for (var round = -5; round < Rounds; round++)
        {
            var now = round;
            var snapshot = InProcess.Fresh(folder);
            SyntaxTree tree = null!;
            BoundDocument document = null!;
            LinkedTechnique linked = null!;
            Add("read the text", () => tree = YamlReader.Read(new SourceText(file, text)));
            Add("bind the tree", () =>
            {
                document = BoundDocument.Of(tree);
                _ = document.Problems.Length;
            });
            Add("link the technique", () => linked = TechniqueLinker.Link(document, snapshot));
            var context = new TechniqueContext(linked, snapshot.StudyOf, snapshot.AsOf, new FindingSink(file));
            foreach (var rule in RuleRegistry.OfTechniques) Add("rule " + rule.Name, () => rule.Check(context));

            void Add(string part, Action work)
            {
                var time = Figures.Time(work);
                if (now < 0) return;
                if (!times.TryGetValue(part, out var known)) times[part] = known = new double[Rounds];
                known[now] = time;
            }
        }

        Figures.Say($"  {file}");
        foreach (var (part, list) in times.Where(part => part.Value.Average() > 0.01).OrderByDescending(part => part.Value.Average())) Figures.Tell("  " + part, list);
    }
}
