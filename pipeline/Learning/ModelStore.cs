using PartsSignal.Analysis.Prediction.ModelFiles;
using PartsSignal.Analysis.Prediction.OddsPipeline;
using PartsSignal.Pipeline.Core;

namespace PartsSignal.Pipeline.Learning;

/// <summary>Paths and files of the model and its card.</summary>
internal static class ModelStore
{
    /// <summary>Path of the model in the compact form that answers at once.</summary>
    public static string PathOf(OutputFolder output) => Path.Combine(output.Model, "parts.model");

    /// <summary>Path of the same model in the learning library's own form, for other programs.</summary>
    public static string PipelineOf(OutputFolder output) => Path.Combine(output.Model, "predictor.zip");

    /// <summary>Path of the model card.</summary>
    public static string CardOf(OutputFolder output) => Path.Combine(output.Model, "card.json");

    /// <summary>Writes the model in both forms. One that knows no need has none of the library's form.</summary>
    public static void Write(OutputFolder output, ShippedModel model)
    {
        Directory.CreateDirectory(output.Model);
        using (FileStream stream = File.Create(PathOf(output)))
        {
            ModelFile.Write(stream, model);
        }

        if (model.Needs.Count > 0)
        {
            using FileStream pipeline = File.Create(PipelineOf(output));
            PartOddsPipeline.Save(pipeline, model);
        }
    }

    /// <summary>Reads the model of the last run.</summary>
    /// <exception cref="BadInputException">There is none yet.</exception>
    public static ShippedModel Read(OutputFolder output)
    {
        string path = PathOf(output);
        if (!File.Exists(path))
        {
            throw new BadInputException($"{path}: there is no model yet. Run 'partssignal run' first, or name its folder with --out.");
        }

        using var bytes = new MemoryStream(File.ReadAllBytes(path));
        return ModelFile.Read(bytes);
    }
}
