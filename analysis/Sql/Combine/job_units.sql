-- One row per job: the appliance it is about, by serial, else by place and model where that leaves one appliance only.
with seen as (
    select
        *,
        case when model_basis in ('exact', 'compact', 'confusable', 'reviewed') then model_number end as known_number
    from job_models
),
-- appliances are counted, never gathered: what is gathered cannot be spilled
known as (
    select place_key, model_number, appliance_type, unit_id from register_rows where place_key is not null
    union
    select place_key, known_number, appliance_type, serial_key from seen where place_key is not null and serial_key is not null
),
units_of_models as (
    select distinct place_key, model_number, unit_id from known where model_number is not null
),
by_model as (
    select place_key, model_number, count(*) as units
    from units_of_models
    group by place_key, model_number
),
only_of_model as (
    select u.place_key, u.model_number, u.unit_id
    from units_of_models as u
    join by_model as m using (place_key, model_number)
    where m.units = 1
),
-- a job with a serial needs no other way to its appliance
without_serial as (
    from seen where serial_key is null and place_key is not null
),
first_look as (
    select
        s.place,
        s.place_key,
        s.known_number,
        s.appliance_type,
        s.brand,
        case
            when s.known_number is null then null
            when k.units = 1 then o.unit_id
            when k.units is null then md5(concat_ws('|', s.place_key, s.known_number))
        end as unit_id
    from without_serial as s
    left join by_model as k on k.place_key = s.place_key and k.model_number = s.known_number
    left join only_of_model as o on o.place_key = s.place_key and o.model_number = s.known_number
),
units_of_types as (
    select place_key, appliance_type, unit_id from known where appliance_type is not null
    union
    select place_key, appliance_type, unit_id from first_look where unit_id is not null and appliance_type is not null
),
by_type as (
    select place_key, appliance_type, count(*) as units
    from units_of_types
    group by place_key, appliance_type
),
only_of_type as (
    select u.place_key, u.appliance_type, u.unit_id
    from units_of_types as u
    join by_type as t using (place_key, appliance_type)
    where t.units = 1
),
placed as (
    select
        f.place,
        case
            when f.unit_id is not null then f.unit_id
            when f.known_number is not null then null
            when t.units = 1 then o.unit_id
            when t.units is null and f.appliance_type is not null then md5(concat_ws('|', f.place_key, f.appliance_type, coalesce(f.brand, '')))
        end as unit_id
    from first_look as f
    left join by_type as t using (place_key, appliance_type)
    left join only_of_type as o using (place_key, appliance_type)
)
select j.* exclude (serial_key, place_key), coalesce(j.serial_key, p.unit_id) as unit_id
from job_models as j
left join placed as p using (place)
