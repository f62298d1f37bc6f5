-- One row per order line whose part is known.
select
    supplier,
    ordered_on,
    received_on,
    part_number,
    quantity - coalesce(returned_quantity, 0) as kept,
    unit_cost,
    job_id
from part_orders
where part_number is not null
order by ordered_on, order_id, line
