using PartsSignal.Analysis.Sql;

namespace PartsSignal.Pipeline.Tests.Transform;

public sealed class ModelAndAgeTests
{
    [Fact]
    public void Combine_TypedModels_FindModelAndFamily()
    {
        (string? Typed, string? Brand, string Expected)[] cases =
        [
            ("WE4680-A", "Orvane", "WE4680-A|F1|exact"),
            ("we4680 a", "Orvane", "WE4680-A|F1|compact"),
            ("WE468O-A", "orvane", "WE4680-A|F1|confusable"),
            ("WE4680", "Orvane", "WE4680|F1|base"),
            ("WE4680-C", "Orvane", "WE4680-C|F1|base"),
            ("WE4680-A", "Orvan", "WE4680-A|F1|exact"),
            ("WE4680-A", null, "WE4680-A|F1|exact"),
            ("WE999-A", "Orvane", "WE999-A|F1|learned"),
            ("QQ1", "Orvane", "QQ1|-|unknown"),
            ("WE4680-A", "Tessel", "WE4680-A|-|unknown"),
            (null, "Orvane", "-|-|unknown"),
        ];
        using var shop = new TransformShop();
        shop.Add(
                new StagedModel("WE4680-A", "F1"), new StagedModel("WE4680-B", "F1"), new StagedModel("WE1370-A", "F1"),
                new StagedModel("TD100", "F2") { Brand = "Tessel" })
            .Add([.. cases.Select((c, i) => new StagedJob($"J{i:00}") { SourceOrder = 2, ModelRaw = c.Typed, Brand = c.Brand })])
            .Combine();
        Assert.Equal(cases.Select(c => c.Expected), shop.Rows("from jobs select model_number, model_family, model_basis order by job_id"));
    }

    [Fact]
    public void Combine_ModelListWithWildcards_TellsTheFamilies()
    {
        (string Typed, string Expected)[] cases =
        [
            ("DX4077", "F3|pattern"),
            ("DX40777", "-|unknown"),
            ("ST9-L", "F4|pattern"),
            ("ST9C", "-|unknown"),
            ("ST9 R/L", "F4|compact"),
            ("DX4011", "F9|exact"),
        ];
        using var shop = new TransformShop();
        shop.Add(new StagedModel("DX40##", "F3"), new StagedModel("ST9R/L", "F4"), new StagedModel("DX4011", "F9"))
            .Add([.. cases.Select((c, i) => new StagedJob($"J{i}") { SourceOrder = 2, ModelRaw = c.Typed })])
            .Combine();
        Assert.Equal(cases.Select(c => c.Expected), shop.Rows("from jobs select model_family, model_basis order by job_id"));
    }

    [Fact]
    public void Combine_NoModelListTwoBrandsWithOnePrefix_AreTwoFamilies()
    {
        using var shop = new TransformShop();
        shop.Add([.. new[] { "Orvane", "Tessel" }.SelectMany(b => new[] { "KPX-100", "KPX-200", "KPX-300" }.SelectMany((m, i) =>
                new[] { 0, 1 }.Select(k => new StagedJob($"{b}{i}{k}") { ModelRaw = m, Brand = b })))])
            .Combine();
        Assert.Equal(["Orvane KPX|6", "Tessel KPX|6"], shop.Rows("from jobs select model_family, count(*) group by 1 order by 1"));
    }

    [Fact]
    public void Combine_ModelsWithoutFamily_LearnsItFromTheSharedPrefix()
    {
        using var shop = new TransformShop();
        shop.Add(new StagedModel("KP-100/1", null), new StagedModel("KP-200/1", null), new StagedModel("KP-200/2", null), new StagedModel("ZZ9", null)).Combine();
        Assert.Equal(
            ["KP-100/1|KP|learned|KP1001|-", "KP-200/1|KP|learned|KP200|1", "KP-200/2|KP|learned|KP200|2", "ZZ9|ZZ9|learned|ZZ9|-"],
            shop.Rows("from models select model_number, model_family, family_basis, base, revision order by 1"));
    }

    [Fact]
    public void Combine_NoModelList_LearnsFamiliesFromJobs()
    {
        using var shop = new TransformShop();
        shop.Add([.. new[] { "KPX-100", "KPX-200", "KPX-300", "KPX-300", "SOLO7" }.Select((m, i) => new StagedJob($"J{i}") { ModelRaw = m })]).Combine();
        Assert.Equal(["KPX|4", "-|1"], shop.Rows("from jobs select model_family, count(*) group by 1 order by 2 desc"));
        Assert.Equal(["KPX-100|KPX|learned", "KPX-200|KPX|learned", "KPX-300|KPX|learned"], shop.Rows("from models select model_number, model_family, family_basis"));
    }

    [Fact]
    public void Combine_LookAlikeListedModels_AreReportedNotMerged()
    {
        using var shop = new TransformShop();
        shop.Add(new StagedModel("QDW500", "F1"), new StagedModel("QDW5OO", "F2"))
            .Add(new StagedJob("J1") { SourceOrder = 2, ModelRaw = "QDW50O" })
            .Combine();
        Assert.Equal(["-"], shop.Rows("from jobs select model_family"));
        Assert.Equal(["QDW500", "QDW5OO"], shop.Rows("from data_faults select subject where fault_kind = 'model_number_collision'"));
    }

    [Fact]
    public void Combine_SerialCandidates_AreNarrowedNeverGuessed()
    {
        const string Either = "2003-02-10/2003-02-16;2015-02-09/2015-02-15";
        (string? Candidates, DateOnly? Launch, DateOnly? Bought, string Expected)[] cases =
        [
            (Either, new(2004, 1, 1), null, "2015-02-09|2015-02-15|9.057|date code"),
            (Either, null, new(2015, 6, 1), "2015-02-09|2015-02-15|9.057|date code"),
            (Either, null, null, "2003-02-10|2015-02-15|-|several date codes"),
            ("2027-02-10/2027-02-16", null, new(2015, 6, 1), "2014-06-01|2015-06-01|9.258|purchase date"),
            (null, null, null, "-|-|-|unknown"),
        ];
        using var shop = new TransformShop();
        shop.Add([.. cases.Select((c, i) => new StagedModel($"WE{i}", "F1") { FirstMade = c.Launch })])
            .Add([.. cases.Select((c, i) => new StagedJob($"J{i}") { SourceOrder = 2, ModelRaw = $"WE{i}", SerialCandidates = c.Candidates, PurchasedOn = c.Bought })])
            .Combine();
        Assert.Equal(cases.Select(c => c.Expected), shop.Rows("from jobs select made_from, made_to, age_years, age_basis order by job_id"));
    }

    [Fact]
    public void Combine_SeveralDates_AreKeptWithTheirChancesAndTheAgeIsAnInterval()
    {
        using var shop = new TransformShop();
        // three washers known to be 9 years old, one known to be 21: chances (3 + 1/2) to (1 + 1/2)
        shop.Add([.. new[] { 2015, 2015, 2015, 2003 }.Select((y, i) => new StagedJob($"K{i}") { SerialKey = $"k{i}", SerialCandidates = $"{y}-02-10/{y}-02-16" })])
            .Add(new StagedJob("J1") { SerialKey = "s1", SerialCandidates = "2003-02-10/2003-02-16;2015-02-10/2015-02-16" })
            .Combine();
        Assert.Equal(
            ["2003-02-10|2003-02-16|2|0.3|serial", "2015-02-10|2015-02-16|2|0.7|serial"],
            shop.Rows("from build_dates select made_from, made_to, candidates, round(weight, 9), basis where job_id = 'J1'"));
        Assert.Equal(
            ["-|9.046|21.062|0.7|several date codes"],
            shop.Rows("from jobs select age_years, age_least_years, age_most_years, age_chance, age_basis where job_id = 'J1'"));
        Assert.Equal(["1"], shop.Rows("from jobs select distinct age_chance where job_id <> 'J1'"));
    }

    [Fact]
    public void Combine_NoDateFits_IsAFault()
    {
        using var shop = new TransformShop();
        shop.Add(new StagedJob("J1") { SerialCandidates = "2027-02-10/2027-02-16" }, new StagedJob("J2") { SerialFault = "week 60" }).Combine();
        Assert.Equal(["serial_breaks_rule|J2", "serial_fits_no_date|J1"], shop.Rows("from data_faults select fault_kind, subject"));
    }

    [Fact]
    public void Combine_Register_SaysTheAgeAndLaterCallsOnlyLookBack()
    {
        using var shop = new TransformShop();
        shop.Add(new StagedUnit("s1") { MadeOnFrom = new(2014, 3, 1), MadeOnTo = new(2014, 3, 31), InstalledOn = new(2014, 6, 1), ModelRaw = "WE1" })
            .Add(
                new StagedJob("J1") { SourceOrder = 2, SerialKey = "s1" },
                new StagedJob("J2") { SourceOrder = 2, SerialKey = "s2", OpenedOn = new(2024, 3, 1) },
                new StagedJob("J3") { SourceOrder = 2, SerialKey = "s2", OpenedOn = new(2024, 3, 9), SerialCandidates = "2015-02-09/2015-02-15" },
                new StagedJob("J4") { SourceOrder = 2, SerialKey = "s2", OpenedOn = new(2024, 4, 9) })
            .Combine();
        Assert.Equal(
            ["J1|register", "J2|unknown", "J3|date code", "J4|date code"],
            shop.Rows("from jobs select job_id, age_basis order by 1"));
        Assert.Equal(["s1|WE1|2014-06-01|yes|2024-03-04", "s2|-|-|no|2024-03-01"], shop.Rows("from units select unit_id, model_number, installed_on, registered, seen_first"));
    }

    [Fact]
    public void Combine_RegisterWithAges_CountsThemBackFromTheDayOfTheList()
    {
        using var shop = new TransformShop();
        shop.Add(
                new StagedUnit("s1") { AgeMonths = 24, ListedOn = new(2023, 1, 1) },
                new StagedUnit("s2") { AgeYears = 6, PurchasedOn = new(2018, 2, 1), ListedOn = new(2024, 1, 1) })
            .Add(new StagedJob("J1") { SourceOrder = 2, SerialKey = "s1" }, new StagedJob("J2") { SourceOrder = 2, SerialKey = "s2" })
            .Combine();
        Assert.Equal(["2020-12-01|2021-02-01|3.17|stated", "2017-02-01|2018-02-01|6.586|purchase date"], shop.Rows("from jobs select made_from, made_to, age_years, age_basis order by job_id"));
        Assert.Equal(["-", "2018-02-01"], shop.Rows("from units select installed_on order by unit_id"));
    }

    [Fact]
    public void Combine_RegisterWithAPurchaseDate_ChoosesAmongDateCodesAndTellsAnAge()
    {
        using var shop = new TransformShop();
        shop.Add(new StagedUnit("s1") { PurchasedOn = new(2015, 6, 1) }, new StagedUnit("s2") { PurchasedOn = new(2020, 6, 1) })
            .Add(
                new StagedJob("J1") { SourceOrder = 2, SerialKey = "s1", SerialCandidates = "2003-02-10/2003-02-16;2015-02-10/2015-02-16" },
                new StagedJob("J2") { SourceOrder = 2, SerialKey = "s2" })
            .Combine();
        Assert.Equal(["2015-02-10|2015-02-16|date code", "2019-06-02|2020-06-01|purchase date"], shop.Rows("from jobs select made_from, made_to, age_basis order by job_id"));
    }

    [Fact]
    public void Combine_RegisterWithAgesAndDates_OnlyAgesThatTheDatesAllowTellTheBuild()
    {
        using var shop = new TransformShop();
        shop.Add(
                new StagedUnit("s1") { AgeYears = 8, ListedOn = new(2026, 1, 1), PurchasedOn = new(2018, 3, 1) },
                new StagedUnit("s2") { AgeYears = 8, ListedOn = new(2026, 1, 1), PurchasedOn = new(2010, 3, 1) },
                new StagedUnit("s3") { InstalledOn = new(2019, 5, 1) },
                new StagedUnit("s4") { AgeYears = 5, ListedOn = new(2026, 1, 1) })
            .Add(
                new StagedJob("J1") { SourceOrder = 2, SerialKey = "s3", SerialCandidates = "2020-02-10/2020-02-16" },
                new StagedJob("J2") { SourceOrder = 2, SerialKey = "s4", SerialCandidates = "2020-02-10/2020-02-16" })
            .Combine();
        Assert.Equal(
            ["s1|2016-12-31|2018-03-01", "s2|-|-", "s3|2020-02-10|2020-02-16", "s4|2020-02-10|2020-02-16"],
            shop.Rows("from units select unit_id, made_from, made_to order by 1"));
        Assert.Equal(["J1|date code", "J2|date code"], shop.Rows("from jobs select job_id, age_basis order by 1"));
    }

    [Fact]
    public void Combine_AgesInMonthsAndDays_AreYearsInTheStore()
    {
        using var shop = new TransformShop();
        shop.Add(new StagedJob("J1") { AgeStatedMonths = 60 }, new StagedJob("J2") { AgeStatedDays = 1461 }, new StagedJob("J3") { AgeStatedYears = 3 }).Combine();
        Assert.Equal(["J1|5|stated", "J2|4|stated", "J3|3|stated"], shop.Rows("from jobs select job_id, round(age_years, 1), age_basis order by job_id"));
    }

    // A unit that nobody called about counts as well: without a type it would be in no rate of its type.
    [Fact]
    public void Combine_RegisterWithoutTypes_TypeComesFromTheModelAsTypedOnJobs()
    {
        using var shop = new TransformShop();
        shop.Add(new StagedUnit("s1") { ApplianceType = null, ModelRaw = "WE1" }, new StagedUnit("s2") { ApplianceType = null, ModelRaw = "WE1" })
            .Add(new StagedJob("J1") { SourceOrder = 2, SerialKey = "s1", ModelRaw = "WE1" })
            .Combine();
        Assert.Equal(["s1|washer", "s2|washer"], shop.Rows("from units select unit_id, appliance_type order by 1"));
    }

    [Fact]
    public void Combine_RegisterWithoutTypes_BrandTellsTheTypeOnlyWithEnoughJobsAndModelsOfOneType()
    {
        (string Brand, int Jobs, int Models, string? OtherType, string Expected)[] cases =
            [("Orvane", 20, 3, null, "washer"), ("Tessel", 19, 3, null, "-"), ("Quellmark", 20, 2, null, "-"), ("Brixomere", 20, 3, "dryer", "-")];
        string[] typed = ["WE100", "KQ200", "TD300"];
        using var shop = new TransformShop();
        shop.Add([.. cases.Select((c, i) => new StagedUnit($"s{i}") { Brand = c.Brand, ApplianceType = null, ModelRaw = "ZZ9" })])
            .Add([.. cases.SelectMany(c => Enumerable.Range(0, c.Jobs).Select(i => new StagedJob($"{c.Brand}{i}") { SourceOrder = 2, Brand = c.Brand, ModelRaw = typed[i % c.Models] }))])
            .Add([.. cases.Where(c => c.OtherType is not null).Select(c => new StagedJob($"{c.Brand} X") { SourceOrder = 2, Brand = c.Brand, ApplianceType = c.OtherType, ModelRaw = "RR4" })])
            .Combine();
        Assert.Equal(cases.Select(c => c.Expected), shop.Rows("from units select appliance_type where unit_id in ('s0', 's1', 's2', 's3') order by unit_id"));
    }

    [Fact]
    public void Combine_NoSerial_PlaceAndModelTellTheUnitUnlessThereAreTwo()
    {
        using var shop = new TransformShop();
        shop.Add(new StagedModel("WE1", "F1"), new StagedModel("DR2", "F2") { ApplianceType = "dryer" })
            .Add(
                new StagedJob("J1") { SourceOrder = 2, SerialKey = "s1", PlaceKey = "p1", ModelRaw = "WE1" },
                new StagedJob("J2") { SourceOrder = 2, PlaceKey = "p1", ModelRaw = "we1" },
                new StagedJob("J3") { SourceOrder = 2, PlaceKey = "p1" },
                new StagedJob("J4") { SourceOrder = 2, PlaceKey = "p1", ModelRaw = "DR2", ApplianceType = "dryer" },
                new StagedJob("J5") { SourceOrder = 2, SerialKey = "s8", PlaceKey = "p2", ModelRaw = "WE1" },
                new StagedJob("J6") { SourceOrder = 2, SerialKey = "s9", PlaceKey = "p2", ModelRaw = "WE1" },
                new StagedJob("J7") { SourceOrder = 2, PlaceKey = "p2", ModelRaw = "WE1" })
            .Combine();
        Assert.Equal(["J1|s1", "J2|s1", "J3|s1"], shop.Rows("from jobs select job_id, unit_id where job_id <= 'J3' order by 1"));
        Assert.Equal(["J4|no", "J7|yes"], shop.Rows("from jobs select job_id, unit_id is null where job_id in ('J4', 'J7') order by 1"));
    }

    // A register's machine is found by customer and model where that is one machine; where it is one of two, neither is taken.
    [Fact]
    public void Combine_NoSerial_CustomerAndModelTellTheListedMachineUnlessThereAreTwo()
    {
        using var shop = new TransformShop();
        shop.Add(
                new StagedUnit("s1") { PlaceKey = "p1", ModelRaw = "WE1" }, new StagedUnit("s2") { PlaceKey = "p1", ModelRaw = "WE2" },
                new StagedUnit("s3") { PlaceKey = "p2", ModelRaw = "WE1" }, new StagedUnit("s4") { PlaceKey = "p2", ModelRaw = "WE1" })
            .Add(
                new StagedJob("J1") { SourceOrder = 2, PlaceKey = "p1", ModelRaw = "we-1" },
                new StagedJob("J2") { SourceOrder = 2, PlaceKey = "p1" },
                new StagedJob("J3") { SourceOrder = 2, PlaceKey = "p2", ModelRaw = "WE1" })
            .Combine();
        Assert.Equal(["J1|s1", "J2|-", "J3|-"], shop.Rows("from jobs select job_id, unit_id order by 1"));
    }

    // A machine and the one that took its place are of one model: each job is about the one in use on its day.
    [Theory]
    [InlineData("WE1")]
    [InlineData(null)]
    public void Combine_NoSerial_MachineInUseOnTheDayIsTaken(string? model)
    {
        (string Job, DateOnly Day)[] jobs =
        [
            ("J1 before both", new(2014, 12, 31)), ("J2 first", new(2015, 1, 1)), ("J3 its last day", new(2023, 6, 1)), ("J4 between", new(2023, 6, 5)),
            ("J5 second", new(2023, 6, 10)), ("J6 three are there", new(2024, 2, 1)),
        ];
        using var shop = new TransformShop();
        shop.Add(
                new StagedUnit("s1") { PlaceKey = "p1", ModelRaw = "WE1", InstalledOn = new(2015, 1, 1), RemovedOn = new(2023, 6, 1) },
                new StagedUnit("s2") { PlaceKey = "p1", ModelRaw = "WE1", InstalledOn = new(2023, 6, 10) },
                new StagedUnit("s3") { PlaceKey = "p1", ModelRaw = "WE1", InstalledOn = new(2024, 1, 1) },
                new StagedUnit("s4") { PlaceKey = "p1", ModelRaw = "WE1", InstalledOn = new(2024, 1, 1) },
                new StagedUnit("gone") { PlaceKey = "p2", ModelRaw = "WE1", InstalledOn = new(2015, 1, 1), RemovedOn = new(2020, 1, 1) })
            .Add([
                .. jobs.Select(j => new StagedJob(j.Job) { SourceOrder = 2, PlaceKey = "p1", ModelRaw = model, OpenedOn = j.Day, ClosedOn = j.Day }),
                new StagedJob("J7 of a machine that is gone") { SourceOrder = 2, PlaceKey = "p2", ModelRaw = model, OpenedOn = new(2024, 1, 1), ClosedOn = new(2024, 1, 1) }])
            .Combine();
        Assert.Equal(["-", "s1", "s1", "-", "s2", "-", "-"], shop.Rows("from jobs select unit_id order by job_id"));
    }

    // Where only the installation is told, machines called about and others have one age; what is not told is no age of 0.
    [Fact]
    public void Combine_RegisterWithInstallationOnly_CalledOrNotTheAgeIsTheSameAndUnknownIsNotNew()
    {
        using var shop = new TransformShop();
        shop.Add(new StagedUnit("s1") { InstalledOn = new(2022, 3, 4) }, new StagedUnit("s9") { InstalledOn = new(2022, 3, 4) })
            .Add(new StagedJob("J1") { SourceOrder = 2, SerialKey = "s1", OpenedOn = new(2024, 3, 4) }, new StagedJob("J2") { SourceOrder = 2, SerialKey = "s2" })
            .Combine();
        Assert.Equal(
            ["J1|2.501|2.001", "J2|-|-"],
            shop.Rows("from jobs select job_id, age_years, age_least_years order by 1"));
        ResultRunner.Build(shop.Database, [SqlModels.Find("int_unit_births")!], TimeProvider.System);
        Assert.Equal(["s1|2021-09-02", "s2|-", "s9|2021-09-02"], shop.Rows("from int_unit_births select unit_id, born_on order by 1"));
    }
}
