-- One row per price list whose column of components sorts parts into groups, such as "hydraulic" or "pumps": a group holds
-- parts of several names, and few descriptions contain the name of their group.
with named as (
    select
        p.source_order,
        p.component,
        coalesce(n.likely_component, n.own_component) as name,
        n.likely_component = p.component or contains(lower(p.description), replace(p.component, '_', ' ')) as is_said
    from staged_parts as p
    anti join int_row_status as f using (source_order, source_line)
    join part_names as n on n.description = lower(trim(p.description))
    where p.component is not null
)
select source_order
from named
where name is not null
group by source_order
having count(distinct name) >= 2 * count(distinct component) and 2 * count_if(coalesce(is_said, false)) < count(*)
