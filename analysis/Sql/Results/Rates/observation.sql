-- One row: the days the job log speaks for. Variable as_of: last day, null for the newest call in the log.
select
    min(opened_on) as first_day,
    coalesce(getvariable('as_of')::date, max(opened_on)) as last_day
from jobs
