-- One row per component of a type that has failures of known age and no curve on any basis.
select appliance_type, component, max(failures) as failures, min_by(curve_missing, (-failures, basis)) as reason
from age_curve_summary
where model_family = 'all'
group by appliance_type, component
having count(*) filter (where curve_missing is null) = 0
order by failures desc, appliance_type, component
limit 15
