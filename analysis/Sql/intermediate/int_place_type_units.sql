-- One row per address, appliance type and day from which other appliances of it are in use there: how many, and which if it
-- is one. Counted as in int_place_model_units.
with apart as (
    select place_key, appliance_type, unit_id from int_place_units where appliance_type is not null
    union
    select place_key, appliance_type, unit_id from int_jobs_placed_by_model where unit_id is not null and appliance_type is not null
),
numbered as (
    select a.*, d.used_from, d.used_to, row_number() over (partition by a.place_key, a.appliance_type order by a.unit_id) as number
    from apart as a
    left join int_register_days as d using (unit_id)
),
changes as (
    select place_key, appliance_type, coalesce(used_from, date '0001-01-01') as from_day, 1 as units, number from numbered
    union all
    select place_key, appliance_type, used_to + 1, -1, -number from numbered where used_to is not null
    union all
    select distinct place_key, appliance_type, date '0001-01-01', 0, 0 from numbered
),
along as (
    select
        place_key,
        appliance_type,
        from_day,
        sum(sum(units)) over so_far as units,
        sum(sum(number)) over so_far as number
    from changes
    group by place_key, appliance_type, from_day
    window so_far as (partition by place_key, appliance_type order by from_day)
)
select a.place_key, a.appliance_type, a.from_day, a.units::bigint as units, case when a.units = 1 then n.unit_id end as unit_id
from along as a
left join numbered as n on n.place_key = a.place_key and n.appliance_type = a.appliance_type and n.number = a.number
