-- One row: the day the data speaks for. The shop's own, else the newest date on any record.
with days as (
    select max(opened_on) as day_on from staged_jobs
    union all select max(closed_on) from staged_jobs
    union all select max(ordered_on) from staged_part_orders
    union all select max(received_on) from staged_part_orders
    union all select max(counted_on) from staged_van_counts
)
select coalesce(getvariable('as_of')::date, max(day_on)) as as_of
from days
