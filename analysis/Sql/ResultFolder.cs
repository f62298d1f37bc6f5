namespace PartsSignal.Analysis.Sql;

/// <summary>The result tables a run has published, and how a later session sees them.</summary>
public static class ResultFolder
{
    /// <summary>Makes every result visible as a view named as its file. A folder that is not there gives none.</summary>
    public static void Attach(Database database, string folder)
    {
        if (!Directory.Exists(folder))
        {
            return;
        }

        foreach (string file in Directory.EnumerateFiles(folder, "*.parquet").Order(StringComparer.Ordinal))
        {
            string name = Database.Quote(Path.GetFileNameWithoutExtension(file));
            database.Execute($"create or replace view {name} as from read_parquet({Database.Literal(file.Replace('\\', '/'))})");
        }
    }
}
