-- One row per row without an address key or a model number.
select place_key, model_number
from int_place_model_units
where place_key is null
    or model_number is null
