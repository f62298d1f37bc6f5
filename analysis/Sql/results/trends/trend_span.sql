-- One row: first month of the log and last month that is over, counted as year * 12 + month - 1.
with days as (
    select min(opened_on) as first_day, coalesce(getvariable('as_of')::date, max(opened_on)) as last_day
    from jobs
)

select
    (year(first_day) * 12 + month(first_day) - 1)::integer as first_month,
    (year(last_day + 1) * 12 + month(last_day + 1) - 2)::integer as last_month
from days
where first_day is not null
