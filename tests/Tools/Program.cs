using System.Globalization;
using TechLint.Tests.Tools;
using TechLint.Tests.Tools.Pages;

switch (args)
{
    case ["pages"]:
        return PagesCommand.Run();
    case ["worst-cases"]:
        return WorstCasesCommand.Run();
    case ["worst-cases", var count]:
        return WorstCasesCommand.Run(int.Parse(count, CultureInfo.InvariantCulture));
    default:
        Console.Error.WriteLine("pages: writes docs/rules from the rules and their fixtures");
        Console.Error.WriteLine("worst-cases: holds the worst-case search to brute force and writes tests/Validation/Data/worst-cases.csv");
        return 2;
}
