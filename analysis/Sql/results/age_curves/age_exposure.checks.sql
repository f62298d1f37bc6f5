-- One row per cell without time, or where cells do not add up to the watched days.
select 'no time' as fault, appliance_type, model_family, age_year, unit_years
from age_exposure
where not unit_years > 0
union all
select 'sum differs', null, null, null, total
from (
    select (select coalesce(sum(unit_years), 0) from age_exposure)
        - (
            select coalesce(sum(least(exit_days, 40 * 365.25) - least(entry_days, 40 * 365.25)), 0) / 365.25
            from unit_ages
            where left_out is null
        ) as total
)
where abs(total) > 1e-6 * (1 + (select coalesce(sum(unit_years), 0) from age_exposure))
