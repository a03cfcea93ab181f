namespace TechLint.Reports;

/// <summary>Running text broken at blanks, for people.</summary>
internal static class Paragraphs
{
    public const int Width = 80;

    public static void Write(TextWriter output, string indent, string text)
    {
        var used = 0;
        foreach (var word in text.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            if (used > 0 && used + 1 + word.Length > Width)
            {
                output.Write('\n');
                used = 0;
            }

            var lead = used == 0 ? indent : " ";
            output.Write(lead);
            output.Write(word);
            used += lead.Length + word.Length;
        }

        output.Write('\n');
    }
}
