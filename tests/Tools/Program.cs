using System.Globalization;
using TechLint.Tests.Tools;
using TechLint.Tests.Tools.Pages;
using TechLint.Tests.Tools.Validation;
using TechLint.Tests.Tools.Waves;

switch (args)
{
    case ["pages"]:
        return PagesCommand.Run();
    case ["worst-cases"]:
        return WorstCasesCommand.Run();
    case ["worst-cases", var count]:
        return WorstCasesCommand.Run(int.Parse(count, CultureInfo.InvariantCulture));
    case ["validation"]:
        return ValidationCommand.Run();
    case ["wave-simulation", .. var names]:
        return WaveCommand.Run(names);
    default:
        Console.Error.WriteLine("pages: writes docs/rules from the rules and their fixtures");
        Console.Error.WriteLine("worst-cases: holds the worst-case search to brute force and writes tests/Validation/Data/worst-cases.csv");
        Console.Error.WriteLine("validation: runs the Validation tests and writes docs/validation.md from what they found");
        Console.Error.WriteLine("wave-simulation [NAME ...]: simulates elastic waves and writes tests/Validation/Data/wave-*.json (minutes)");
        return 2;
}
