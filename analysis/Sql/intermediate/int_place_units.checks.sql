-- One row per appliance without an address key or an identifier.
select place_key, unit_id
from int_place_units
where place_key is null
    or unit_id is null
