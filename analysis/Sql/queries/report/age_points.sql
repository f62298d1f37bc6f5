-- One row per age of one curve.
select age_years, share_failed, lower, upper
from age_curve_points
where appliance_type = $type and component = $component and model_family = $family and basis = $basis and share_failed is not null
order by age_years
