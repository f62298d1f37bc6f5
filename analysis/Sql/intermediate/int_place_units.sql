-- One row per record of an appliance at an address, by serial or register; only addresses with a job without a serial.
with told as (
    select place_key, model_number, appliance_type, unit_id
    from int_register_units
    where place_key is not null
    union all
    select j.place_key, m.known_number, m.appliance_type, j.serial_key
    from int_job_rows as j
    join int_resolved_models as m
        on m.typed_brand is not distinct from j.brand
        and m.typed_type is not distinct from j.appliance_type
        and m.model_raw is not distinct from j.model_raw
        and m.model_key is not distinct from j.model_key
    where j.place_key is not null and j.serial_key is not null
)
from told
semi join int_jobs_without_serial using (place_key)
