using PartsSignal.Analysis.Statistics;
using PartsSignal.Reports.Charts;
using PartsSignal.Reports.Monthly;
using PartsSignal.Reports.Tests.Charts;

namespace PartsSignal.Reports.Tests.Monthly;

/// <summary>An invented month with something in every section, and text that tries to be markup wherever text is shown.</summary>
internal static class SampleMonth
{
    public const string Evil = "<script>window.ran=1</script><img src=x onerror=window.ran=1>";
    private static readonly DateOnly Month = new(2024, 5, 1);

    public static MonthlyFacts Full() => new()
    {
        Shop = "Millrace Appliance Repair " + Evil,
        Currency = "EUR",
        Opening = Opening(),
        Rising = new RisingFacts([Alarm("washer inlet valve, family K41"), Alarm("washer drain pump")],
            [new ExplainedAlarm("all washer calls, family K41", 14, 6.2, "washer inlet valve, family K41")], [new EarlierAlarm(Month.AddMonths(-2), "dryer igniter " + Evil, 5, 1.1, Month.AddMonths(-3))], 148,
            "A series counts as rising when so many calls would come by chance in fewer than 1 of 10 alarms raised (false discovery rate 10 %), with at least 3 calls and 1.5 times the expected.",
            "A series of 2 calls a month has to rise to 7 before it is seen: a doubling is found in 11 of 100 months."),
        Failures = Failures(),
        Ages = new AgeFacts(
            [new AgeGroup("Drain pump: share of units without a failure", "Kaplan-Meier on the register, late entry allowed for.", "212 units, 48 failures.", "Half of the units have had a drain pump failure by 9 years.", "without failure, %", ChartGallery.Ages().Lines)],
            [new AgeRefusal("door_seal", 2, "too few failures of known age")]),
        Returns = new ReturnFacts(30,
            [.. Enumerable.Range(0, 6).Select(i => new ReturnMonth(new DateOnly(2023, 12, 1).AddMonths(i), 300 + i, 9 + i, Estimate.From((9.0 + i) / (300 + i), 0.016, 0.06)))],
            [new("control_board", 210, 17, Estimate.From(0.081, 0.051, 0.126), true), new("drain_pump", 330, 11, Estimate.From(0.033, 0.019, 0.059)), new("door_seal", 4, 0, Estimate.None("too few: 4 repairs"))],
            [new("J-2024-311", new DateOnly(2024, 5, 9), "J-2024-280", 12, "still wont drain " + Evil, "drain_pump", "control_board")],
            2380m, "Jobs on units that cannot be followed are left out, so the share is a lower bound."),
        Suppliers = new SupplierFacts(
            [new("Norrad Supply", "drain_pump", 180, 22, Estimate.From(0.122, 0.082, 0.178), 0.031, 160, true), new("Hallam Spares", "inlet_valve", 140, 4, Estimate.From(0.029, 0.011, 0.071), 0.035, 112, false)],
            [new("Norrad Supply", 1402, 12, Estimate.From(3, 3, 4), 8, Estimate.From(0.021, 0.015, 0.03)), new("Hallam Spares", 911, 4, Estimate.From(4, 3, 5), 15, Estimate.From(0.013, 0.008, 0.023))], 90),
        Vans = new VanFacts(
            [new VanPlanView("1", "42 parts for 1,481 EUR of 1,500; 61 of 200 space units.", true,
                [.. Enumerable.Range(1, 45).Select(i => new VanLine("1", i % 3 == 0 ? "add" : "keep", $"PX-{10000 + i}", i == 2 ? Evil : "drain pump, 30 W", i % 3 == 0 ? 0 : 1, 1 + (i % 2), 12.5m + i, 60 - i, 40.5 - (i / 2.0)))])],
            "On 1,204 jobs of January to May 2024, which the plan had not seen, it would have finished 74.1 % at the first visit; most used parts first: 68.0 %.",
            [new("plan", 1204, Estimate.From(0.741, 0.716, 0.765), 1481m), new("most used parts first", 1204, Estimate.From(0.68, 0.653, 0.706), 1499m), new("best possible with hindsight", 1204, Estimate.From(0.79, 0.766, 0.812), 1500m)],
            ChartGallery.Budget().Lines, "1,204 jobs of January to May 2024, replayed.", 1500),
        Predictor = new PredictorFacts("The back-off model answers: on later months its log loss was lowest.",
            [new("back-off", "all", 2210, 1.71, 0.48, 0.79, 0.021), new("complaint only", "all", 2210, 2.05, 0.37, 0.68, 0.03)],
            [new("back-off", "all", 371, 1.69, 0.49, 0.8, 0.04)], ChartGallery.Calibration().Bins, "2,210 closed jobs of the test months, first answers.",
            [("What it answers", "Odds over the parts a call may need, no part among them."), ("Not for", "Deciding whether work is safe.")]),
        DataQuality = new DataQualityFacts(
            [new("jobs-2023.csv", "jobs", 4000, 3900, 60, 30, 10), new("orders <b>.csv", "part_orders", 2000, 1990, 0, 0, 10)],
            [new("date_unreadable", "opened_on", 12, "jobs-2023.csv, line 77", "Write days as 2024-02-29.")],
            [new("supersession_cycle", 1, "PX-1 to PX-2 to PX-1")],
            [new("the age of the appliance", 5200, 20000, 5000, "5,000 for rates by age", "Write down the serial number or the year of purchase.")]),
    };

    public static MonthlyFacts Bare(MonthFacts now) => new()
    {
        Shop = "the shop",
        Opening = new OpeningFacts(now, null, null, null, null, 30, 0, 0, new DateOnly(2024, 6, 12)),
        DataQuality = new DataQualityFacts([], [], [], []),
    };

    public static MonthFacts OneJob() => new(Month, 1, 0, 1, Estimate.From(1, 0.207, 1), 1, Estimate.From(0, 0, 0.793), "drain_pump", 1, Estimate.From(1, 0.207, 1), 0, 1, 0);

    public static OpeningFacts Opening() => new(
        Facts(Month, 412, 0.666), Facts(Month.AddMonths(-1), 398, 0.641), Facts(Month.AddYears(-1), 377, 0.62),
        ["washer inlet valve, family K41 (9 calls where 2.10 were to be expected)"], new ReturnMonth(Month.AddMonths(-1), 340, 11, Estimate.From(0.032, 0.018, 0.056)), 30, 20, 6000, new DateOnly(2024, 6, 12))
    {
        CameBackBefore = new ReturnMonth(Month.AddMonths(-2), 320, 13, Estimate.From(0.041, 0.024, 0.068)),
        CameBackYearAgo = new ReturnMonth(Month.AddMonths(-13), 300, 8, Estimate.From(0.027, 0.014, 0.052)),
    };

    private static MonthFacts Facts(DateOnly month, long calls, double first) => new(
        month, calls, 41, 365, Estimate.From(first, first - 0.05, first + 0.05), 310, Estimate.From(0.28, 0.23, 0.33), "drain_pump", 34, Estimate.From(0.11, 0.08, 0.15), 33, 90, 4);

    private static RisingAlarm Alarm(string name) => new(
        name, Slow: false, 9, 2.1, 2.0, 0.0004, new DateOnly(2024, 3, 1),
        ["8 of 9 appliances of known build month were built from January 2023 to March 2023: this points to a bad batch.", "It stays a rise without model K41-220 B."],
        ChartGallery.Series().Months, [new("J-2024-300", new DateOnly(2024, 5, 3), "K41-220 B", 1.2, "wont fill " + Evil, "PX-20011", "Norrad Supply")]);

    private static FailureFacts Failures() => new(
        [
            new("drain_pump", 34, 310, Estimate.From(0.11, 0.08, 0.15), 0.1, 0.09), new("inlet_valve", 30, 310, Estimate.From(0.097, 0.069, 0.135), 0.06, 0.05),
            new(Evil, 3, 310, Estimate.From(0.01, 0.003, 0.028), null, null),
        ],
        [new("K41", "washer", Evil, 52, Estimate.From(0.126, 0.098, 0.162), "inlet_valve") { StandsOut = "inlet valve 2.6 times (share of calls)" }, new("R7", "refrigerator", "Ostrava Blue", 12, Estimate.From(0.029, 0.017, 0.05), null)],
        [new("drain pump", "Register of 212 units, 1,840 unit-years.", ChartGallery.Bands().Bands)], "Calls of May 2024", new RegisterMachines(212, 0, "contract", "household"));
}
