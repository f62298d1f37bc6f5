-- One row per basis, appliance type, family, component and year of age: cases of that component on watched appliances.
select
    u.basis,
    u.appliance_type,
    u.model_family,
    f.component,
    ceil(f.age_days / 365.25)::integer - 1 as age_year,
    count(*) as events
from unit_failures as f
join unit_ages as u using (unit_id)
where u.left_out is null
    and f.age_days > u.entry_days and f.age_days <= u.exit_days
group by all
order by u.basis, u.appliance_type, u.model_family, f.component, age_year
