-- One row per row without an address key, a model or a day, with fewer appliances than none, or with one that is not named.
select place_key, model
from int_place_model_units
where place_key is null
    or model is null
    or from_day is null
    or units < 0
    or (units = 1) <> (unit_id is not null)
