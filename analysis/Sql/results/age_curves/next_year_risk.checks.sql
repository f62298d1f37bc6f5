-- One row per chance that is no chance, lies outside its interval, is missing without a reason, or appears twice.
select 'chance' as fault, basis, appliance_type, model_family, component, age_years
from next_year_risk
where (chance is null) = (missing is null) or not coalesce(chance between 0 and 1, true)
    or chance < lower - 1e-12 or chance > upper + 1e-12
union all
select 'twice', basis, appliance_type, model_family, component, age_years
from next_year_risk
group by all
having count(*) > 1
