-- One row per basis, appliance type, family and year of age: years for which appliances of that age were watched. Basis
-- register: listed ones; units_seen: others, from the day after their first call.
with years as (
    select unnest(range(0, 40)) as age_year
)
select
    u.basis,
    u.appliance_type,
    u.model_family,
    y.age_year::integer as age_year,
    sum(least(u.exit_days, 365.25 * (y.age_year + 1)) - greatest(u.entry_days, 365.25 * y.age_year)) / 365.25 as unit_years
from unit_ages as u
join years as y
    on u.exit_days > 365.25 * y.age_year and u.entry_days < 365.25 * (y.age_year + 1)
where u.left_out is null
group by all
order by u.basis, u.appliance_type, u.model_family, age_year
