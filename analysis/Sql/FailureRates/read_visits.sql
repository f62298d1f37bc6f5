-- One row per appliance type and number of calls: units that called so often.
select appliance_type, visits, units
from unit_visits
order by appliance_type, visits
