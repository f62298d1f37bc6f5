-- One row per job without a serial at a known address, with the appliance inferred from the address: by model if that
-- leaves only one appliance in use on the day, else by type.
select
    f.place,
    case
        when f.unit_id is not null then f.unit_id
        when f.known_number is not null then null
        when t.place_key is not null then t.unit_id
        when f.appliance_type is not null then md5(concat_ws('|', f.place_key, f.appliance_type, coalesce(f.brand, '')))
    end as unit_id
from int_jobs_placed_by_model as f
asof left join int_place_type_units as t
    on t.place_key = f.place_key and t.appliance_type = f.appliance_type and f.opened_on >= t.from_day
