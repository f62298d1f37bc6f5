-- One row per row without an address key or an appliance type.
select place_key, appliance_type
from int_place_type_units
where place_key is null
    or appliance_type is null
