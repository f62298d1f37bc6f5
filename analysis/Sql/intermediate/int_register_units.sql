-- One row per appliance in the register, with its model and its identifier.
with family_types as (
    select x.model_family, m.appliance_type
    from int_model_numbers as m
    join (select distinct brand_key, model_key, model_family from int_model_matches) as x using (brand_key, model_key)
    where m.appliance_type is not null and x.model_family is not null
    group by x.model_family, m.appliance_type
    qualify row_number() over (partition by x.model_family order by sum(coalesce(m.jobs, 1)) desc, m.appliance_type) = 1
),
model_types as (
    select model_key, min(appliance_type) as appliance_type
    from int_model_numbers
    where appliance_type is not null
    group by model_key
    having count(distinct appliance_type) = 1
),
brand_witnesses as (
    select b.brand_key, j.appliance_type, nullif(j.model_key, '') as model_key, 1 as jobs
    from int_job_rows as j
    join int_brands as b on b.typed_key = compact_key(j.brand)
    where j.appliance_type is not null and b.brand_key <> ''
    union all
    select brand_key, appliance_type, null, 0
    from int_model_numbers
    where listed and appliance_type is not null and brand_key <> ''
),
-- a few calls do not tell that a brand makes nothing else
brand_types as (
    select brand_key, min(appliance_type) as appliance_type
    from brand_witnesses
    group by brand_key
    having count(distinct appliance_type) = 1 and count(distinct model_key) >= 3 and sum(jobs) >= 20
),
kept as (
    select
        u.*,
        coalesce(u.listed_on, a.as_of) as aged_on,
        (coalesce(u.age_years, u.age_months / 12) * 365.25)::integer as age_days,
        -- an age is rounded to its unit, one way or the other
        case when u.age_years is not null then 366 else 31 end as unit_days
    from staged_units as u
    cross join int_as_of as a
    anti join int_row_status as f using (source_order, source_line)
),
-- an age that the days of the same machine contradict tells nothing
aged as (
    select
        source_order,
        source_line,
        aged_on - age_days - unit_days as first_day,
        least(aged_on - age_days + unit_days, aged_on, purchased_on, installed_on) as last_day
    from kept
    where made_on_from is null
        and age_days is not null
        and aged_on - age_days - unit_days <= least(aged_on, purchased_on, installed_on)
),
matched as (
    select
        k.* exclude (brand, appliance_type, installed_on, aged_on, age_days, unit_days),
        s.first_day as aged_from,
        s.last_day as aged_to,
        -- what was bought is in service
        coalesce(k.installed_on, k.purchased_on) as installed_on,
        coalesce(x.model_number, nullif(upper(trim(k.model_raw)), '')) as model_number,
        x.model_family,
        -- a register without types must not lose the units that nobody called about: family, model and brand tell the type
        coalesce(f.appliance_type, k.appliance_type, t.appliance_type, m.appliance_type, n.appliance_type) as appliance_type,
        coalesce(f.brand, b.brand, k.brand) as brand
    from kept as k
    left join aged as s using (source_order, source_line)
    left join int_brands as b on b.typed_key = compact_key(k.brand)
    left join int_model_matches as x on x.brand_key = coalesce(b.brand_key, '') and x.model_raw = k.model_raw and x.model_key = k.model_key
    left join (
        select model_family, min(appliance_type) as appliance_type, min(brand) as brand from int_listed_models group by model_family
    ) as f using (model_family)
    left join family_types as t using (model_family)
    left join model_types as m on m.model_key = k.model_key
    left join brand_types as n on n.brand_key = b.brand_key
)
select
    coalesce(
        serial_key,
        md5(concat_ws('|', place_key, coalesce(model_number, brand, ''),
            row_number() over (partition by serial_key, place_key, coalesce(model_number, brand, '') order by source_order, source_line)))
    ) as unit_id,
    *
from matched
