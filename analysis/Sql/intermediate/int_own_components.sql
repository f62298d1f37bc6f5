-- One row per component of the shop's own: words on its part lines, or for what was at fault, that no table knows, used at least three times.
with lines as (
    select lower(trim(description)) as description, component from int_job_part_rows where description is not null
    union all
    select lower(trim(o.description)), o.component
    from staged_part_orders as o
    anti join int_row_status as f using (source_order, source_line)
    where o.description is not null
    union all
    select lower(trim(fault_text)), fault_component from int_job_rows where fault_text is not null
)
select
    n.own_component as component,
    min(n.role) as role,
    count(*) as times,
    arg_min(l.description, (-length(l.description), l.description)) as example
from lines as l
join part_names as n using (description)
where l.component is null
    and n.own_component is not null
    and n.own_component not in (select component from component_roles)
group by n.own_component
having count(*) >= 3
order by component
