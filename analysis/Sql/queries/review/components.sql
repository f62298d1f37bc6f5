-- One row per part description that tells no component of the tables, and per component of the shop's own, most frequent first.
-- 'counted_as' is the component that it counts as until it is answered.
with described as (
    select lower(trim(description)) as description, part_raw from int_job_part_rows where component is null and description is not null
    union all
    select lower(trim(description)), part_raw from staged_part_orders where component is null and description is not null
    union all
    select lower(trim(description)), part_raw from staged_parts where component is null and description is not null
    union all
    select lower(trim(fault_text)), null from staged_jobs where fault_component is null and fault_text is not null
),
named as (
    select d.description, d.part_raw, w.component as counted_as, o.component is not null as is_own, coalesce(o.role, '') as role
    from described as d
    left join int_worded_components as w using (description)
    left join int_own_components as o on o.component = w.component
    anti join int_answered_components as r using (description)
    where d.description <> ''
)
select
    mode(description order by description) as description,
    count(*) as times,
    count(distinct description) as writings,
    coalesce(counted_as, '') as counted_as,
    min(role) as role,
    min(part_raw) as example
from named
group by counted_as, case when is_own then counted_as else description end
order by times desc, description
