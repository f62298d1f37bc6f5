-- One row per type and component that appears twice.
select appliance_type, component
from register_untold
group by all
having count(*) > 1
