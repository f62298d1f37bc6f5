namespace PartsSignal.Reports.Charts;

/// <summary>The words that go with a plot.</summary>
/// <param name="Key">Short name, letters, digits and hyphens; unique on the page.</param>
/// <param name="Title">What is drawn.</param>
/// <param name="Conclusion">What to conclude from it.</param>
/// <param name="Basis">What the figures count, from when to when, and how many.</param>
/// <param name="Alternative">The plot in words, for readers who cannot see it.</param>
internal sealed record ChartText(string Key, string Title, string Conclusion, string Basis, string Alternative);
