-- One row per technician that stands twice, has no name or no van
select technician
from int_crew_vans
group by technician
having count(*) > 1 or technician is null or min(van) is null
