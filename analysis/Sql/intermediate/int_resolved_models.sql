-- One row per spelling of brand, type and model on a job, with the model, family, appliance type and brand it means.
with families as (
    select
        model_family,
        mode(appliance_type order by appliance_type) as appliance_type,
        mode(brand order by brand) as brand,
        -- if one model has no last day, the family is still made
        case when count(*) = count(first_made) then min(first_made) end as first_made,
        case when count(*) = count(last_made) then max(last_made) end as last_made
    from int_listed_models
    group by model_family
),
spans as (
    select
        model_number,
        case when count(*) = count(first_made) then min(first_made) end as first_made,
        case when count(*) = count(last_made) then max(last_made) end as last_made
    from int_listed_models
    group by model_number
),
written as (
    select distinct brand, appliance_type, model_raw, model_key from int_model_spellings
),
matched as (
    select
        w.brand as typed_brand,
        w.appliance_type as typed_type,
        w.model_raw,
        w.model_key,
        coalesce(x.model_number, nullif(upper(trim(w.model_raw)), '')) as model_number,
        x.model_family,
        case when w.model_key is null or w.model_key = '' then 'unknown' else coalesce(x.basis, 'unknown') end as model_basis,
        -- the type in the model list wins over the caller's, which is often 'other'
        coalesce(f.appliance_type, w.appliance_type) as appliance_type,
        coalesce(f.brand, b.brand, w.brand) as brand,
        case when x.model_number is null then f.first_made else m.first_made end as first_made,
        case when x.model_number is null then f.last_made else m.last_made end as last_made
    from written as w
    left join int_brands as b on b.typed_key = compact_key(w.brand)
    left join int_model_matches as x on x.brand_key = coalesce(b.brand_key, '') and x.model_raw = w.model_raw and x.model_key = w.model_key
    left join families as f using (model_family)
    left join spans as m on m.model_number = x.model_number
)
select
    row_number() over (order by typed_brand, typed_type, model_raw, model_key)::integer as writing,
    *,
    -- certain enough to tell two appliances at one address apart
    case when model_basis in ('exact', 'compact', 'confusable', 'reviewed') then model_number end as known_number
from matched
