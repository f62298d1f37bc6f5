-- One row per catalog number that can be ordered, stocked or was fitted, and per family and component where words stand for numbers.
with listed as (
    select
        component,
        case when count(distinct price) = 1 then max(price) end as price,
        max(space_units) as space_units
    from parts
    where component is not null
    group by component
),
named as (
    select distinct part_number, component
    from told_part_lines()
    where told_by = 'words'
)
select
    part_number,
    current_number,
    description,
    component,
    price,
    size_class,
    coalesce(space_units, 1) as space_units,
    returnable_days,
    supplier
from parts
union all
select
    n.part_number,
    n.part_number,
    'find the number by model',
    n.component,
    l.price,
    null,
    coalesce(l.space_units, 1),
    null,
    null
from named as n
left join listed as l using (component)
order by part_number
