-- One row: the days of the log, and those of them that the rates speak for.
-- Variables: rate_from and rate_to, a stretch of the log (null: all of it).
select
    first_day as log_first_day,
    last_day as log_last_day,
    greatest(first_day, getvariable('rate_from')::date) as first_day,
    least(last_day, getvariable('rate_to')::date) as last_day
from int_log_window
