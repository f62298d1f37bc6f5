-- One row per rise told in the six months before that stands by itself.
select "month", kind, appliance_type, component, model_family, observed, expected, since
from trend_alarms
where "month" >= ($month::date - interval 6 month)::date and "month" < $month::date and part_of is null
order by "month" desc, kind <> 'month', q, ratio desc, appliance_type, component, model_family
