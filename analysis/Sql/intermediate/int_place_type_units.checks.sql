-- One row per row without an address key, a type or a day, with fewer appliances than none, or with one that is not named.
select place_key, appliance_type
from int_place_type_units
where place_key is null
    or appliance_type is null
    or from_day is null
    or units < 0
    or (units = 1) <> (unit_id is not null)
