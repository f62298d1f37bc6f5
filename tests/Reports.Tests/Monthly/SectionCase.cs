using System.Net;
using System.Text.RegularExpressions;
using PartsSignal.Analysis.Sql;
using PartsSignal.Reports.Components;
using PartsSignal.Reports.Monthly;

namespace PartsSignal.Reports.Tests.Monthly;

/// <summary>What tests of the report's sections share: a session with small tables, and a section as a reader sees it.</summary>
internal static class SectionCase
{
    public static readonly DateOnly Month = new(2024, 5, 1);

    public static MonthlyOptions Options { get; } = new("the shop", "EUR", Month, new DateOnly(2024, 6, 12), 30, 85, []);

    /// <summary>A session with an empty store and the given tables.</summary>
    public static Database Session(params string[] tables)
    {
        Database database = Database.Open();
        foreach (string name in StoreTables.Names)
        {
            StoreTables.CreateEmpty(database, name);

            // Tests fill only the columns that matter to them.
            database.Execute($"create or replace table {Database.Quote(name)} as from {Database.Quote(name)}");
        }

        foreach (string table in tables)
        {
            database.Execute("create or replace table " + table);
        }

        return database;
    }

    /// <summary>The section's text without its markup.</summary>
    public static string Text(Section section) =>
        WebUtility.HtmlDecode(Regex.Replace(Regex.Replace(section.Draw("EUR").ToString(), "<[^>]+>", " "), "\\s+", " ")).Replace('\u00A0', ' ');

    /// <summary>One table of a section.</summary>
    public static TableView Table(Section section, string key) => section.Tables.Single(t => t.Key == key);
}
