-- One row per supplier and reason given for sending parts back.
-- The share of pieces returned is in supplier_quality. Its total differs: it counts only lines received by the last day,
-- and at most the pieces ordered; this table counts every line ordered by then, and all pieces returned.
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
