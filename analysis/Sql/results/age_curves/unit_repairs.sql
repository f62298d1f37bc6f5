-- One row per registered appliance that can be used: its watched ages and the ages of all its repairs, one for each
-- case, in days.
select
    u.appliance_type,
    u.model_family,
    u.unit_id,
    u.entry_days,
    u.exit_days,
    coalesce(list(f.age_days order by f.age_days) filter (f.age_days is not null), []) as repair_days
from unit_ages as u
left join unit_failures as f
    on u.unit_id = f.unit_id and f.age_days > u.entry_days and f.age_days <= u.exit_days
where u.basis = 'register' and u.left_out is null
group by all
order by u.appliance_type, u.model_family, u.unit_id
