-- One row per part description that tells no component of the tables, per component of the shop's own, and per component
-- that counts apart because the tables do not have it on that type of appliance; most frequent first.
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
    anti join (from part_names where role = 'charge') as c using (description)
    where d.description <> ''
),
told as (
    select job_id, component, part_raw from job_parts
    union
    select job_id, main_component, null from jobs where main_component not in ('none', 'other_part')
),
apart as (
    select replace(t.component, '_', ' ') as description, t.component, count(distinct t.job_id) as times, min(t.part_raw) as example
    from told as t
    anti join int_component_roles as r using (component)
    where t.component is not null
    group by t.component
),
together as (
    select
        mode(description order by description) as description,
        count(*) as times,
        count(distinct description) as writings,
        coalesce(counted_as, '') as counted_as,
        min(role) as role,
        min(part_raw) as example
    from named
    group by counted_as, case when is_own then counted_as else description end
    union all
    select description, times, 1, component, 'main', example from apart
)
select description, times, writings, counted_as, role, example
from together
order by times desc, description
