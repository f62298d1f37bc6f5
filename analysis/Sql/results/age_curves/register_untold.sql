-- One row per appliance type of the register and component: failures on listed units, and failures that may be on one: the
-- unit cannot be told, or it is not listed but its customer has a listed unit of that type. Only of customers like the
-- register's.
-- materialize: result
with listed_customers as (
    select distinct j.customer_id, u.appliance_type
    from jobs as j
    join units as u using (unit_id)
    where u.registered and j.customer_id is not null
),
failures as (
    select
        c.component,
        j.appliance_type,
        coalesce(u.registered, false) as is_listed,
        c.unit_id is null or l.customer_id is not null as may_be,
        coalesce(j.customer_kind, 'unknown') as customer_kind
    from cases as c
    join jobs as j using (job_id)
    left join units as u on u.unit_id = c.unit_id
    left join listed_customers as l on l.customer_id = j.customer_id and l.appliance_type = j.appliance_type
    where c.component not in ('none', 'other_part')
        and j.appliance_type in (select appliance_type from units where registered)
)
select
    f.appliance_type,
    f.component,
    count(*) filter (where f.is_listed) as listed,
    count(*) filter (
        where not f.is_listed and f.may_be
            and (m.whose not in ('contract', 'household') or f.customer_kind in ('unknown', m.whose))
    ) as untold
from failures as f
cross join register_machines as m
group by f.appliance_type, f.component
having listed > 0 or untold > 0
order by f.appliance_type, f.component
