-- One row per job without a serial at a known address: the appliance of that model in use there on the day, if there is only
-- one. A model that no list knows is looked for in the register, as typed. Where the model was there, but none of it in use
-- on that day, the appliance is not known.
select
    s.place,
    s.place_key,
    s.opened_on,
    s.known_number,
    s.appliance_type,
    s.brand,
    case
        when s.known_number is not null and k.place_key is null then md5(concat_ws('|', s.place_key, s.known_number))
        else k.unit_id
    end as unit_id
from int_jobs_without_serial as s
asof left join int_place_model_units as k
    on k.place_key = s.place_key and k.model = coalesce(s.known_number, 'typed ' || s.model_key) and s.opened_on >= k.from_day
