-- One row per job without a serial at a known address: the appliance of that model there, if there is only one. A model that
-- no list knows is looked for in the register, as typed.
with listed as (
    select place_key, model_key, min(unit_id) as unit_id
    from int_register_units
    where place_key is not null and model_key <> ''
    group by place_key, model_key
    having count(distinct unit_id) = 1
)
select
    s.place,
    s.place_key,
    s.known_number,
    s.appliance_type,
    s.brand,
    case
        when s.known_number is null then l.unit_id
        when k.place_key is null then md5(concat_ws('|', s.place_key, s.known_number))
        else k.unit_id
    end as unit_id
from int_jobs_without_serial as s
left join int_place_model_units as k on k.place_key = s.place_key and k.model_number = s.known_number
left join listed as l on l.place_key = s.place_key and l.model_key = s.model_key
