-- One row: the last day that the order lines speak for, or null if nothing was called for, ordered or received.
-- It is the shop's own (variable as_of), else the newest day of a call, an order or a receipt.
with days as (
    select max(opened_on) as newest from jobs
    union all
    select max(ordered_on) from part_orders
    union all
    select max(received_on) from part_orders
)
select coalesce(getvariable('as_of')::date, max(newest)) as last_day
from days
