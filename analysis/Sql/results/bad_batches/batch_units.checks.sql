-- One row per unit that appears twice.
select unit_id
from batch_units
group by unit_id
having count(*) > 1
