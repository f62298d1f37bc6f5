-- One row per supplier and reason given for sending parts back.
-- materialize: result
select
    supplier,
    coalesce(lower(trim(return_reason)), 'no reason given') as return_reason,
    count(*) as order_lines,
    sum(returned_quantity)::bigint as pieces_returned
from part_orders
where returned_quantity > 0 and ordered_on <= (select last_day from int_order_window)
group by supplier, coalesce(lower(trim(return_reason)), 'no reason given')
order by supplier, pieces_returned desc, return_reason
