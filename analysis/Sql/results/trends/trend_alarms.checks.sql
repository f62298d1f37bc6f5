-- One row per alarm that is no alarm: too small a count or ratio, no job behind it, or named twice.
select 'gate' as fault, month, appliance_type, component, model_family
from trend_alarms
where observed < 3 or ratio < 1.5 or least_ratio not between 1 and ratio or jobs < 1
union all
select 'twice', month, appliance_type, component, model_family
from trend_alarms
group by month, appliance_type, component, model_family, kind
having count(*) > 1
