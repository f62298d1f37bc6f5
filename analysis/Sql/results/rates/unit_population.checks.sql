-- One row per appliance type with fewer units out there than were seen.
select appliance_type, units_seen, lower_bound, if_all_alike
from unit_population
where lower_bound < units_seen or if_all_alike < units_seen
