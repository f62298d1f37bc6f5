-- One row per job without a serial at a known address.
select j.place, j.place_key, j.opened_on, j.model_key, m.known_number, m.appliance_type, m.brand
from int_job_rows as j
join int_resolved_models as m
    on m.typed_brand is not distinct from j.brand
    and m.typed_type is not distinct from j.appliance_type
    and m.model_raw is not distinct from j.model_raw
    and m.model_key is not distinct from j.model_key
where j.serial_key is null and j.place_key is not null
