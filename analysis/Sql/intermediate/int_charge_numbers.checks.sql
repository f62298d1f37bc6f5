-- One row per number without a key, or that stands twice.
select part_key
from int_charge_numbers
group by part_key
having part_key is null or part_key = '' or count(*) > 1
