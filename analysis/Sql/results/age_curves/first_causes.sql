-- One row per registered appliance that can be used: the age at its first failure seen and the component that failed,
-- or the age when watching ended.
with first_seen as (
    select u.unit_id, min((f.age_days, f.component)) as failure
    from unit_ages as u
    join unit_failures as f using (unit_id)
    where f.age_days > u.entry_days and f.age_days <= u.exit_days
    group by u.unit_id
)
select
    u.appliance_type,
    u.unit_id,
    u.entry_days,
    coalesce(f.failure[1], u.exit_days)::integer as exit_days,
    f.failure[2] as component
from unit_ages as u
left join first_seen as f using (unit_id)
where u.basis = 'register' and u.left_out is null
order by u.appliance_type, u.unit_id
