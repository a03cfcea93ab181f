namespace TechLint.Rules.Findings;

public enum Severity { Note, Warning, Error }
