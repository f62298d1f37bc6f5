-- One row per appliance in the register, with its model and its identifier.
with kept as (
    select u.*
    from staged_units as u
    anti join int_row_status as f using (source_order, source_line)
),
matched as (
    select
        k.* exclude (brand, appliance_type),
        coalesce(x.model_number, nullif(upper(trim(k.model_raw)), '')) as model_number,
        x.model_family,
        coalesce(f.appliance_type, k.appliance_type) as appliance_type,
        coalesce(f.brand, b.brand, k.brand) as brand
    from kept as k
    left join int_brands as b on b.typed_key = compact_key(k.brand)
    left join int_model_matches as x on x.brand_key = coalesce(b.brand_key, '') and x.model_raw = k.model_raw and x.model_key = k.model_key
    left join (
        select model_family, min(appliance_type) as appliance_type, min(brand) as brand from int_listed_models group by model_family
    ) as f using (model_family)
)
select
    coalesce(
        serial_key,
        md5(concat_ws('|', place_key, coalesce(model_number, brand, ''),
            row_number() over (partition by serial_key, place_key, coalesce(model_number, brand, '') order by source_order, source_line)))
    ) as unit_id,
    *
from matched
