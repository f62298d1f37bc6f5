-- One row per supplier who sold the part: lines, pieces, price range, days from order to delivery, pieces sent back, and
-- whether the supplier's orders record any return of anything.
with record_returns as (
    select distinct supplier from part_orders where returned_quantity > 0
)
select
    supplier,
    count(*) as lines,
    sum(quantity)::bigint as pieces,
    min(ordered_on) as first_on,
    max(ordered_on) as last_on,
    min(unit_cost) as lowest_cost,
    max(unit_cost) as highest_cost,
    arg_max(unit_cost, (ordered_on, order_id, line)) as last_cost,
    count(*) filter (received_on >= ordered_on) as delivered,
    quantile_cont(received_on - ordered_on, 0.5) filter (received_on >= ordered_on) as median_days,
    quantile_cont(received_on - ordered_on, 0.9) filter (received_on >= ordered_on) as days_90,
    coalesce(sum(quantity) filter (returned_quantity is not null), 0)::bigint as told_pieces,
    coalesce(sum(least(returned_quantity, quantity)) filter (returned_quantity is not null), 0)::bigint as returned,
    supplier in (from record_returns) as records_returns
from part_orders
where part_number = $number
group by supplier
order by lines desc, supplier
