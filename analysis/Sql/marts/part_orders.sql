-- One row per order line.
with kept as (
    select o.*
    from int_numbered_orders as o
    anti join int_row_status as f using (source_order, source_line)
    -- freight and fees on an order are no parts
    anti join (from part_names where role = 'charge') as c on c.description = lower(trim(coalesce(o.description, o.part_raw)))
),
-- the maker's number beside the supplier's is the better witness
numbered as (
    select
        k.*,
        coalesce(m.part_number, r.part_number) as bought_number,
        coalesce(m.basis, r.basis, 'unresolved') as basis
    from kept as k
    left join int_resolved_part_numbers as r on r.supplier = k.supplier and r.raw = k.part_raw and r.typed_key = k.part_key
    left join int_resolved_part_numbers as m
        on m.supplier = k.supplier and m.raw = k.other_raw and m.typed_key = k.other_key and m.basis in ('exact', 'compact')
)
select
    n.order_id,
    row_number() over (partition by n.supplier, n.order_id order by n.source_order, n.source_line)::integer as line,
    n.supplier,
    n.ordered_on,
    n.received_on,
    coalesce(n.part_raw, n.other_raw) as part_raw,
    p.current_number as part_number,
    n.basis as part_basis,
    coalesce(p.component, n.component, w.component) as component,
    n.quantity,
    n.unit_cost,
    n.job_id,
    n.returned_quantity,
    n.return_reason,
    n.source_file,
    n.source_line
from numbered as n
left join parts as p on p.part_number = n.bought_number
left join int_worded_components as w on w.description = lower(trim(n.description))
order by n.ordered_on, n.supplier, n.order_id, line
