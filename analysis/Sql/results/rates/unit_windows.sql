-- One row per unit that was watched: from which day, to before which day, and why its days count.
with log as (
    from observation
),
first_calls as (
    select unit_id, min(opened_on) as first_call
    from jobs
    where unit_id is not null
    group by unit_id
),
watched as (
    select
        units.unit_id,
        case when units.registered then 'register_unit_years' else 'seen_unit_years' end as basis,
        coalesce(units.appliance_type, 'unknown') as appliance_type,
        coalesce(units.brand, 'unknown') as brand,
        coalesce(units.model_family, 'unknown') as model_family,
        births.born_on,
        -- The call that made an unlisted unit known is not counted as an event: the unit is watched from the day after.
        case
            when units.registered then greatest(log.log_first_day, births.used_from)
            else first_calls.first_call + 1
        end as starts_on,
        least(log.log_last_day + 1, units.removed_on) as ends_before,
        units.registered and births.used_from is null as no_start
    from units
    join int_unit_births as births using (unit_id)
    cross join log
    left join first_calls using (unit_id)
    where units.registered or first_calls.first_call is not null
)
select unit_id, basis, appliance_type, brand, model_family, born_on, starts_on, ends_before
from watched
where starts_on < ends_before and not no_start
