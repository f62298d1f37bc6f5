-- One row per pair whose counts contradict each other.
select appliance_type, component, with_component, jobs_both, jobs_component, jobs_with_component
from parts_together
where jobs_both > least(jobs_component, jobs_with_component)
    or greatest(jobs_component, jobs_with_component) > jobs_with_parts
    or share > 1
    or component = with_component
