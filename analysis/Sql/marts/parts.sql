-- One row per catalog part number, current or superseded.
with last_cost as (
    select
        r.part_number,
        arg_max(o.unit_cost, (o.ordered_on, o.source_order, o.source_line)) as unit_cost,
        arg_max(o.supplier, (o.ordered_on, o.source_order, o.source_line)) as supplier
    from staged_part_orders as o
    anti join int_row_status as f using (source_order, source_line)
    join int_resolved_part_numbers as r on r.supplier = o.supplier and r.raw = o.part_raw and r.typed_key = o.part_key
    where o.unit_cost is not null
    group by r.part_number
),
ended as (
    select distinct old_number as part_number
    from supersessions
    where new_number is null and (effective_on is null or effective_on <= getvariable('arrows_as_of')::date)
),
-- an old number's answer speaks for the number itself too: same component, same size, where its own list entry is gone
main as (
    select old_number as part_number, current_number, via from int_current_numbers where place = 1
)
select
    f.part_number,
    coalesce(m.current_number, f.part_number) as current_number,
    coalesce(f.description, n.description) as description,
    coalesce(f.component, n.component) as component,
    coalesce(f.price, c.unit_cost) as price,
    coalesce(f.size_class, n.size_class) as size_class,
    case coalesce(f.size_class, n.size_class) when 'medium' then 3.0 when 'large' then 8.0 when 'bulky' then 25.0 else 1.0 end as space_units,
    coalesce(f.returnable_days, n.returnable_days) as returnable_days,
    coalesce(f.warranty_days, n.warranty_days) as warranty_days,
    coalesce(f.supplier, c.supplier) as supplier,
    e.part_number is null or (m.current_number is not null and m.via <> 'cycle') as available,
    f.basis,
    f.source_file,
    f.source_line
from int_part_details as f
left join main as m using (part_number)
left join int_part_details as n on n.part_number = m.current_number
left join last_cost as c on c.part_number = f.part_number
left join ended as e on e.part_number = f.part_number
order by f.part_number
