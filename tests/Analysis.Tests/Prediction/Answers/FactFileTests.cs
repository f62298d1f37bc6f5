using PartsSignal.Analysis.Prediction.Answers;

namespace PartsSignal.Analysis.Tests.Prediction.Answers;

public sealed class FactFileTests
{
    private static readonly StoreFacts Facts = new(
        [
            ("F-1", new FamilyPart { Component = "inlet_valve", PartNumber = "P-2", Description = "Ventil, 2-fach ä", TimesSeen = 7, Listed = true, Quantity = 2, Price = 12.50m, ReturnableDays = 30 }),
            ("F-1", new FamilyPart { Component = "belt", PartNumber = "P-3", Available = false }),
        ],
        [("M-1", "P-2", 5)],
        [new Companion("washer", "inlet_valve", "fill_hose", 40, 30, 0.75, 1.0 / 3)],
        [new VanPart("P-2", "1", 3, new DateOnly(2026, 10, 30)), new VanPart("P-3", "2", 1, null)],
        [new KnownModel("M-1", "F-1", "washer", "Brixomere"), new KnownModel("M-2", "F-1", null, null)],
        [new YearRisk("register", "washer", "all", "belt", 6, 0.1, 12)])
    {
        Languages = ["de", "en"],
        OwnWords = [new OwnComplaintWords("dispenser_no_water", "dispenser no water")],
    };

    [Fact]
    public void Read_WhatWasWritten_IsTheSameRows()
    {
        StoreFacts read = FactFile.Read(new MemoryStream(Written(Facts)))!;
        Assert.Equal(Facts.Parts, read.Parts);
        Assert.Equal(Facts.ModelParts, read.ModelParts);
        Assert.Equal(Facts.Companions, read.Companions);
        Assert.Equal(Facts.Vans, read.Vans);
        Assert.Equal(Facts.Models, read.Models);
        Assert.Equal(Facts.Risks, read.Risks);
        Assert.Equal(Facts.Languages, read.Languages);
        Assert.Equal(Facts.OwnWords, read.OwnWords);
    }

    [Fact]
    public void Read_CutShortAnywhere_IsNothing()
    {
        byte[] whole = Written(Facts);
        Assert.All(Enumerable.Range(0, whole.Length), length => Assert.Null(FactFile.Read(new MemoryStream(whole, 0, length))));
    }

    [Fact]
    public void Read_AnyByteChanged_GivesAllRowsOrNothing()
    {
        int refused = 0;
        byte[] whole = Written(Facts);
        for (int at = 0; at < whole.Length; at++)
        {
            byte[] damaged = [.. whole];
            damaged[at] ^= 0xFF;
            if (FactFile.Read(new MemoryStream(damaged)) is { } read)
            {
                Assert.Equal(Rows(Facts), Rows(read));
            }
            else
            {
                refused++;
            }
        }

        Assert.InRange(refused, 1, whole.Length - 1);
    }

    private static int[] Rows(StoreFacts facts) =>
        [facts.Parts.Count, facts.ModelParts.Count, facts.Companions.Count, facts.Vans.Count, facts.Models.Count, facts.Risks.Count];

    private static byte[] Written(StoreFacts facts)
    {
        using var stream = new MemoryStream();
        FactFile.Write(stream, facts);
        return stream.ToArray();
    }
}
