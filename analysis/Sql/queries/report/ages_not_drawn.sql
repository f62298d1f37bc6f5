-- One row per component of a type that has failures of known age and no curve on any basis; no reason: a curve was estimated,
-- from fewer failures than it takes to draw one.
select
    appliance_type, component, max(failures) as failures,
    case when count(*) filter (where curve_missing is null) = 0 then min_by(curve_missing, (-failures, basis)) end as reason
from age_curve_summary
where model_family = 'all'
group by appliance_type, component
having count(*) filter (where curve_missing is null and failures >= $least) = 0
order by failures desc, appliance_type, component
limit 15
