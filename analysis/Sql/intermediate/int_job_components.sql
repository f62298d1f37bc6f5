-- One row per job with part lines or charges: how many name a part, and the component the job was about.
with roles as (
    select component, role from int_component_roles
    union all
    -- a component that counts apart on another type of appliance keeps the role of the one it is named after
    select f.appliance_type || '_' || f.component, c.role
    from int_foreign_components as f
    join component_roles as c using (component)
    where f.appliance_type || '_' || f.component not in (select component from int_component_roles)
),
ranked as (
    select
        p.job_id,
        p.component,
        true as is_part,
        -- a main component comes before what usually goes with it; then the order on the job sheet counts
        case when p.component is not null then (coalesce(r.role, 'main') = 'accessory')::bigint << 32 | p.line end as rank
    from job_parts as p
    left join roles as r using (component)
    union all
    select job_id, null, false, null from int_charge_lines
),
counted as (
    select job_id, count(*) filter (is_part) as lines, min(rank) as rank
    from ranked
    group by job_id
)
select j.place, j.opened_on, c.lines, r.component
from counted as c
join int_job_units as j on j.job_id = c.job_id
left join ranked as r on r.job_id = c.job_id and r.rank = c.rank
