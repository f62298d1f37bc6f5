-- One row per slice with impossible figures.
select slice, jobs, log_loss, top_1, top_3, coverage_80, coverage_95
from prediction_slices
where jobs < 0 or log_loss < 0 or top_1 > top_3 or coverage_80 > coverage_95 + 0.000001 or above_lower > above_upper
