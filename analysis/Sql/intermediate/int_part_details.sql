-- One row per catalog number: its component, and what the newest price list says about it.
with listed as (
    -- a group, of charges such as "labor" or of parts such as "pumps", is no component; then the description tells
    select r.part_number, p.* replace (case when g.description is null and l.source_order is null then p.component end as component)
    from staged_parts as p
    left join (from part_names where role = 'charge') as g on g.description = replace(p.component, '_', ' ')
    anti join int_row_status as f using (source_order, source_line)
    left join int_grouped_price_lists as l on l.source_order = p.source_order
    join int_resolved_part_numbers as r on r.supplier = coalesce(p.supplier, '') and r.raw = p.part_raw and r.typed_key = p.part_key
),
newest as (
    select
        part_number,
        first(description order by source_order desc, source_line) filter (description is not null) as description,
        first(component order by source_order desc, source_line) filter (component is not null) as component,
        first(price order by source_order desc, source_line) filter (price is not null) as price,
        first(size_class order by source_order desc, source_line) filter (size_class is not null) as size_class,
        first(returnable_days order by source_order desc, source_line) filter (returnable_days is not null) as returnable_days,
        first(warranty_days order by source_order desc, source_line) filter (warranty_days is not null) as warranty_days,
        first(supplier order by source_order desc, source_line) filter (supplier is not null) as supplier
    from listed
    group by part_number
),
spoken as (
    select r.part_number, coalesce(o.component, w.component) as component, o.description
    from staged_part_orders as o
    left join int_worded_components as w on o.component is null and w.description = lower(trim(o.description))
    join int_resolved_part_numbers as r on r.supplier = o.supplier and r.raw = o.part_raw and r.typed_key = o.part_key
    union all
    select r.part_number, coalesce(p.component, w.component), p.description
    from int_job_part_rows as p
    left join int_worded_components as w on p.component is null and w.description = lower(trim(p.description))
    join int_resolved_part_numbers as r on r.supplier = '' and r.raw = p.part_raw and r.typed_key = p.part_key
),
-- what most order and job lines call it, where no price list has words for it
called as (
    select part_number, component, count(*) as times
    from spoken
    where component is not null
    group by part_number, component
    qualify row_number() over (partition by part_number order by count(*) desc, component) = 1
),
worded as (
    select part_number, min(description) as description from spoken where description is not null group by part_number
)
select
    c.part_number,
    coalesce(n.description, w.description) as description,
    coalesce(case when r.answered then r.component end, n.component, k.component, r.component) as component,
    n.price,
    n.size_class,
    n.returnable_days,
    n.warranty_days,
    n.supplier,
    c.basis,
    c.source_file,
    c.source_line
from int_catalog as c
left join newest as n using (part_number)
left join called as k using (part_number)
left join worded as w using (part_number)
left join int_worded_components as r on r.description = lower(trim(coalesce(n.description, w.description)))
order by c.part_number
