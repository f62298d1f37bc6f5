-- One row per rise told in the month that another one explains.
select appliance_type, component, model_family, kind, observed, expected, part_of
from trend_alarms
where "month" = $month::date and part_of is not null
order by part_of, appliance_type, component, model_family, kind
