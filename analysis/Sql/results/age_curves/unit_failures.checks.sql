-- One row per failure that appears twice.
select unit_id, component, age_days, count(*) as times
from unit_failures
group by all
having count(*) > 1
