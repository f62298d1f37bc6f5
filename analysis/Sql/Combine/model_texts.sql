-- One row per brand and model number of the list or typed on a job or in the register.
with listed as (
    select s.*
    from staged_models as s
    join row_fates as f using (source_order, source_line)
    where f.kind = 'models' and f.fate = 'loaded'
),
-- two lines of one list for one model: the later one speaks, the other becomes a data fault
said as (
    select
        compact_key(brand) as brand_key,
        model_key,
        min(model_confusable) as model_confusable,
        last(trim(model_raw) order by source_order, source_line) as model_raw,
        last(model_pattern order by source_order, source_line) as model_pattern,
        last(model_family order by source_order, source_line) filter (model_family is not null) as model_family,
        last(appliance_type order by source_order, source_line) filter (appliance_type is not null) as appliance_type,
        last(brand order by source_order, source_line) as brand,
        min(first_made) as first_made,
        case when count(*) = count(last_made) then max(last_made) end as last_made,
        true as listed,
        last(source_file order by source_order, source_line) as source_file,
        last(source_line order by source_order, source_line) as source_line,
        null::bigint as jobs
    from listed
    group by compact_key(brand), model_key
),
typed_rows as (
    select coalesce(b.brand_key, '') as brand_key, coalesce(b.brand, t.brand) as brand, t.* exclude (brand)
    from (
        select brand, appliance_type, model_raw, model_key, model_confusable from job_rows where model_key <> ''
        union all
        select brand, appliance_type, model_raw, model_key, model_confusable from staged_units where model_key <> ''
    ) as t
    left join brands as b on b.typed_key = compact_key(t.brand)
),
typed as (
    select
        brand_key,
        model_key,
        min(model_confusable) as model_confusable,
        mode(trim(model_raw) order by model_raw) as model_raw,
        null::varchar as model_pattern,
        null::varchar as model_family,
        mode(appliance_type order by appliance_type) as appliance_type,
        min(brand) as brand,
        null::date as first_made,
        null::date as last_made,
        false as listed,
        null::varchar as source_file,
        null::integer as source_line,
        count(*) as jobs
    from typed_rows
    group by brand_key, model_key
)
from said
union all by name
from typed
