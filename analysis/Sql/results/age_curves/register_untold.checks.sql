-- One row per type and component that appears twice, or expects more than can be.
select appliance_type, component
from register_untold
group by all
having count(*) > 1 or max(expected) > max(untold)
