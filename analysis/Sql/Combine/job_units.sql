-- One row per job: the appliance it is about, by serial, else by place and model where that leaves one appliance only.
with seen as (
    select j.job_id, j.serial_key, j.place_key, m.model_family, m.appliance_type, m.brand,
        case when m.model_basis in ('exact', 'compact', 'confusable', 'reviewed') then m.model_number end as model_number
    from job_rows as j
    join job_models as m using (job_id)
),
known as (
    select place_key, model_number, appliance_type, unit_id from register_rows where place_key is not null
    union
    select place_key, model_number, appliance_type, serial_key from seen where place_key is not null and serial_key is not null
),
by_model as (
    select place_key, model_number, min(unit_id) as unit_id, count(distinct unit_id) as units
    from known
    where model_number is not null
    group by place_key, model_number
),
first_look as (
    select
        s.*,
        case
            when s.serial_key is not null then s.serial_key
            when s.place_key is null or s.model_number is null then null
            when k.units = 1 then k.unit_id
            when k.units is null then md5(concat_ws('|', s.place_key, s.model_number))
        end as unit_id,
        coalesce(k.units, 0) > 1 and s.serial_key is null as many
    from seen as s
    left join by_model as k using (place_key, model_number)
),
by_type as (
    select place_key, appliance_type, min(unit_id) as unit_id, count(distinct unit_id) as units
    from (
        select place_key, appliance_type, unit_id from known
        union
        select place_key, appliance_type, unit_id from first_look where unit_id is not null and place_key is not null
    )
    where appliance_type is not null
    group by place_key, appliance_type
)
select
    f.job_id,
    coalesce(
        f.unit_id,
        case
            when f.many or f.place_key is null or f.model_number is not null then null
            when t.units = 1 then t.unit_id
            when t.units is null and f.appliance_type is not null then md5(concat_ws('|', f.place_key, f.appliance_type, coalesce(f.brand, '')))
        end
    ) as unit_id
from first_look as f
left join by_type as t using (place_key, appliance_type)
