-- One row per appliance that appears twice.
select unit_id, count(*) as times
from unit_repairs
group by unit_id
having count(*) > 1
