-- One row per lead time below zero, out of order, or missing without a reason.
select supplier, "grouping", member, lines, waiting, median_days, ninety_percent_days, missing
from lead_times
where median_days < 0
    or ninety_percent_days < median_days
    or waiting > lines
    or (median_days is null) = (missing is null)
