-- One row per model family with calls in the month, most calls first.
select model_family, appliance_type, brand, calls, share, lower, upper, top_component
from month_families
where month = $month::date
order by calls desc, model_family
limit 20
