-- One row per age band of the components with most failures on the register.
with rates as (
    select appliance_type, subject as component, age_band, events, exposure, estimate, lower, upper, missing
    from failure_rates
    where basis = 'register_unit_years' and "grouping" = 'age' and subject_kind = 'component'
        and subject not in ('none', 'other_part') and age_band <> 'unknown'
),
most as (
    select appliance_type, component, sum(events) as failures, sum(exposure) as unit_years
    from rates
    group by appliance_type, component
    having sum(events) >= 5
    order by failures desc, appliance_type, component
    limit 4
)
select
    r.appliance_type, r.component, r.age_band, r.events::bigint as events, r.exposure, r.estimate, r.lower, r.upper, r.missing,
    m.failures::bigint as failures, m.unit_years
from rates as r
join most as m using (appliance_type, component)
order by m.failures desc, r.appliance_type, r.component, try_cast(regexp_extract(r.age_band, '^\d+') as integer)
