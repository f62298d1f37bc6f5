-- One row per mean that falls with age or lies outside its interval.
with ordered as (
    select *, lag(mean_repairs) over (partition by appliance_type, model_family order by age_years) as before
    from repairs_per_unit
)
select appliance_type, model_family, age_years, mean_repairs, lower, upper
from ordered
where mean_repairs < before - 1e-9 or mean_repairs < lower - 1e-9 or mean_repairs > upper + 1e-9
