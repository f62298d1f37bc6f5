-- One row: the days the rates speak for. Variables: as_of, last day of the data (null: newest call); rate_from and rate_to, a stretch of it (null: all).
with log as (
    select
        min(opened_on) as log_first_day,
        coalesce(getvariable('as_of')::date, max(opened_on)) as log_last_day
    from jobs
)
select
    log_first_day,
    log_last_day,
    greatest(log_first_day, getvariable('rate_from')::date) as first_day,
    least(log_last_day, getvariable('rate_to')::date) as last_day
from log
