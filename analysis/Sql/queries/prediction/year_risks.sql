-- One row per basis, appliance type, family (or all), component and whole year of age with a chance of failing within
-- the next year.
select basis, appliance_type, model_family, component, age_years, chance, events_near_age
from next_year_risk
where chance is not null
order by basis, appliance_type, model_family, component, age_years
