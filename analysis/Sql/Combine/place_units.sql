-- One row per place, model, type and appliance that a serial or the register tells there, as often as it is told.
select place_key, model_number, appliance_type, unit_id
from register_rows
where place_key is not null
union all
select place_key, known_number, appliance_type, serial_key
from job_models
where place_key is not null and serial_key is not null
