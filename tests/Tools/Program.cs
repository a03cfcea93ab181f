using TechLint.Tests.Tools.Pages;

switch (args)
{
    case ["pages"]:
        return PagesCommand.Run();
    default:
        Console.Error.WriteLine("pages: writes docs/rules from the rules and their fixtures");
        return 2;
}
