-- One row: first and last day of the job log. Variable as_of: last day, null for the newest call.
with calls as (
    select min(opened_on) as first_call, max(opened_on) as last_call
    from jobs
)

select first_call as first_day, coalesce(getvariable('as_of')::date, last_call) as last_day
from calls
where first_call is not null
