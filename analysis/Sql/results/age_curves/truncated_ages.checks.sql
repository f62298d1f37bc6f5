-- One row per failure outside the time of the log.
select *
from truncated_ages
where not age_days between earliest_days and latest_days
