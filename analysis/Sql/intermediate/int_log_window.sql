-- One row: the first call of the job log and the last day that it speaks for; no row without a call.
-- The last day is the shop's own (variable as_of), else the day of the newest call.
with calls as (
    select min(opened_on) as first_day, max(opened_on) as newest_call
    from jobs
)
select first_day, coalesce(getvariable('as_of')::date, newest_call) as last_day
from calls
where first_day is not null
