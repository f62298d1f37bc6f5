-- One row per cell with cases but without time.
select e.*
from age_events as e
left join age_exposure as x using (basis, appliance_type, model_family, age_year)
where x.unit_years is null and e.age_year < 40
