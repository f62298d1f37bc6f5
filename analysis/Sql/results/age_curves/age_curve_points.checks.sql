-- One row per point whose share is no share, lies outside its interval, or falls with age.
with ordered as (
    select
        *,
        lag(share_failed) over (partition by appliance_type, component, model_family, basis order by age_years) as before
    from age_curve_points
)
select appliance_type, component, model_family, basis, age_years, share_failed, lower, upper
from ordered
where not coalesce(share_failed between 0 and 1, true) or share_failed < before - 1e-9
    or share_failed < lower - 1e-9 or share_failed > upper + 1e-9
