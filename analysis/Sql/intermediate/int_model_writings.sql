-- One row per brand and model number as typed on jobs or in the register, with the shop's usual writing of it: of numbers of
-- one brand that look alike (O for 0, I or L for 1) the one that is typed most often.
with typed as (
    select coalesce(b.brand_key, '') as brand_key, t.model_key, t.model_confusable, trim(t.model_raw) as model_raw, sum(t.times)::bigint as times
    from int_model_spellings as t
    left join int_brands as b on b.typed_key = compact_key(t.brand)
    where t.model_key <> ''
    group by all
),
numbers as (
    select
        brand_key,
        model_key,
        min(model_confusable) as model_confusable,
        sum(times)::bigint as times,
        arg_min(model_raw, (-times, model_raw)) as model_raw
    from typed
    group by brand_key, model_key
)
select
    brand_key,
    model_key,
    times,
    first_value(model_key) over usual as usual_key,
    first_value(model_raw) over usual as usual_raw
from numbers
window usual as (partition by brand_key, model_confusable order by times desc, model_key)
