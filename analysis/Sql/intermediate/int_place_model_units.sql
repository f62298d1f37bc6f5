-- One row per address, model and day from which other appliances of it are in use there: how many, and which if it is one.
-- A model that no list knows stands as the register types it.
-- Counted along the days, never collected into lists: a list cannot be spilled.
with apart as (
    select place_key, model_number as model, unit_id from int_place_units where model_number is not null
    union
    select place_key, 'typed ' || model_key, unit_id from int_register_units where place_key is not null and model_key <> ''
),
numbered as (
    select a.*, d.used_from, d.used_to, row_number() over (partition by a.place_key, a.model order by a.unit_id) as number
    from apart as a
    left join int_register_days as d using (unit_id)
),
changes as (
    select place_key, model, coalesce(used_from, date '0001-01-01') as from_day, 1 as units, number from numbered
    union all
    select place_key, model, used_to + 1, -1, -number from numbered where used_to is not null
    union all
    select distinct place_key, model, date '0001-01-01', 0, 0 from numbered
),
-- the sum of the numbers in use is the number of the only one
along as (
    select
        place_key,
        model,
        from_day,
        sum(sum(units)) over so_far as units,
        sum(sum(number)) over so_far as number
    from changes
    group by place_key, model, from_day
    window so_far as (partition by place_key, model order by from_day)
)
select a.place_key, a.model, a.from_day, a.units::bigint as units, case when a.units = 1 then n.unit_id end as unit_id
from along as a
left join numbered as n on n.place_key = a.place_key and n.model = a.model and n.number = a.number
