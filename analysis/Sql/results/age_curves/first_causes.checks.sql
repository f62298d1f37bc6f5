-- One row per appliance with an empty stretch.
select *
from first_causes
where entry_days >= exit_days
