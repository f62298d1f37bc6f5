// node count-store.mjs STORE: jobs by year and outcome, and part lines by year and component, a line each.
import pl from "nodejs-polars";

const store = process.argv[2];
const jobs = pl.scanParquet(`${store}/jobs/*/*.parquet`, { hivePartitioning: true });
const lines = pl.scanParquet(`${store}/job_parts/*.parquet`);
const print = (name, frame, key) => {
  for (const row of frame.sort(["year", key]).toRecords()) {
    console.log([name, row.year, row[key] ?? "-", row.rows, row.sum ?? 0].join("|"));
  }
};

print("jobs", await jobs.groupBy(["year", "outcome"]).agg(pl.len().alias("rows"), pl.col("labour_minutes").sum().alias("sum")).collect(), "outcome");
print("lines", await lines.join(jobs.select("job_id", "year"), { on: "job_id" })
  .groupBy(["year", "component"]).agg(pl.len().alias("rows"), pl.col("quantity").sum().alias("sum")).collect(), "component");
