-- One row per curve that appears twice, has neither a figure nor a reason, or whose interval does not hold its figure.
select 'twice' as fault, appliance_type, component, model_family, basis
from age_curve_summary
group by all
having count(*) > 1
union all
select 'no fit and no reason', appliance_type, component, model_family, basis
from age_curve_summary
where (shape is null) = (fit_missing is null) or (median_years is null and median_missing is null)
union all
select 'interval without its figure', appliance_type, component, model_family, basis
from age_curve_summary
where not coalesce(shape >= shape_lower, true) or not coalesce(shape <= shape_upper, true)
    or failures > units
