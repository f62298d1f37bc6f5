-- One row per appliance type of the register and component: failures on listed units, failures that may be on one although
-- the job does not tell (untold_failures), and how many of these are expected to be.
-- materialize: result
with listed as (
    select j.appliance_type, c.component, count(*) as listed
    from cases as c
    join jobs as j using (job_id)
    join units as u on u.unit_id = c.unit_id
    where u.registered and c.component not in ('none', 'other_part')
        and j.appliance_type in (select appliance_type from units where registered)
    group by j.appliance_type, c.component
),
untold as (
    select appliance_type, component, count(*) as untold, sum(chance) as expected
    from untold_failures
    where component not in ('none', 'other_part')
    group by appliance_type, component
)
select
    appliance_type,
    component,
    coalesce(listed, 0) as listed,
    coalesce(untold, 0) as untold,
    coalesce(expected, 0)::double as expected
from listed
full join untold using (appliance_type, component)
order by appliance_type, component
