-- One row per month with impossible figures.
select month, jobs, log_loss, top_1, top_3, coverage_80, coverage_95
from prediction_by_month
where jobs <= 0 or log_loss < 0 or top_1 > top_3 or coverage_80 > coverage_95 + 0.000001
