-- One row per appliance in the register: the first and the last day it was in use; null: not told.
-- materialize: view
select
    unit_id,
    min(installed_on) as used_from,
    -- a removal before the installation tells nothing
    case when max(removed_on) < min(installed_on) then null else max(removed_on) end as used_to
from int_register_units
group by unit_id
