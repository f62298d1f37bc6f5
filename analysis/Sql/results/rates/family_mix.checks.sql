-- One row per family whose components do not add up to its calls, or whose share lies outside its interval.
select appliance_type, model_family, min(component) as component, max(calls) as calls, sum(observed) as observed
from family_mix
group by appliance_type, model_family
having sum(observed) <> max(calls) or max(calls) <> min(calls)
union all
select appliance_type, model_family, component, calls, observed
from family_mix
where share not between share_lower and share_upper
    or information_component not between information_component_lower and information_component_upper
