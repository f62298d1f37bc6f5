-- One row per unit, component and age in days at which that component failed: one for each case, on the day of its first
-- call, with the component of its last diagnosis. A wrong first diagnosis and a repair that did not hold are no failures.
select
    c.unit_id,
    u.basis,
    u.appliance_type,
    u.model_family,
    c.component,
    (c.opened_on - u.born_on)::integer as age_days,
    min(c.job_id) as job_id
from cases as c
join unit_ages as u using (unit_id)
where u.born_on is not null and c.component is not null and c.component not in ('none', 'other_part')
group by all
order by c.unit_id, c.component, age_days
