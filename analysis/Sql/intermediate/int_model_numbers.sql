-- One row per brand and model number that is on the model list, or was typed on a job or in the register. What looks alike
-- is one number, under its usual writing.
with listed as (
    select s.*
    from staged_models as s
    anti join int_row_status as f using (source_order, source_line)
),
-- two lines of one list for one model: the later one speaks, the other becomes a data fault
said as (
    select
        compact_key(brand) as brand_key,
        model_key,
        translate(model_key, 'OIL', '011') as model_confusable,
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
    select
        coalesce(b.brand_key, '') as brand_key,
        coalesce(b.brand, t.brand) as brand,
        w.usual_key as model_key,
        -- another writing counts, but does not name the number
        case when t.model_key = w.usual_key then t.model_raw else w.usual_raw end as model_raw,
        t.* exclude (brand, model_key, model_raw)
    from int_model_spellings as t
    left join int_brands as b on b.typed_key = compact_key(t.brand)
    join int_model_writings as w on w.brand_key = coalesce(b.brand_key, '') and w.model_key = t.model_key
    where t.model_key <> ''
),
usual_writing as (
    select brand_key, model_key, trim(model_raw) as model_raw
    from typed_rows
    group by brand_key, model_key, trim(model_raw)
    qualify row_number() over (partition by brand_key, model_key order by sum(times) desc, min(model_raw)) = 1
),
usual_type as (
    select brand_key, model_key, appliance_type
    from typed_rows
    where appliance_type is not null
    group by brand_key, model_key, appliance_type
    qualify row_number() over (partition by brand_key, model_key order by sum(times) desc, appliance_type) = 1
),
typed as (
    select
        r.brand_key,
        r.model_key,
        min(r.model_confusable) as model_confusable,
        min(w.model_raw) as model_raw,
        null::varchar as model_pattern,
        null::varchar as model_family,
        min(t.appliance_type) as appliance_type,
        min(r.brand) as brand,
        null::date as first_made,
        null::date as last_made,
        false as listed,
        null::varchar as source_file,
        null::integer as source_line,
        sum(r.times)::bigint as jobs
    from typed_rows as r
    join usual_writing as w on w.brand_key = r.brand_key and w.model_key = r.model_key
    left join usual_type as t on t.brand_key = r.brand_key and t.model_key = r.model_key
    group by r.brand_key, r.model_key
)
from said
union all by name
from typed
