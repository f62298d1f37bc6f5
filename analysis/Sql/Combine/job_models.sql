-- One row per job: the model, family, appliance type and brand it is about, with what was said of the appliance's age.
with families as (
    select
        model_family,
        mode(appliance_type order by appliance_type) as appliance_type,
        mode(brand order by brand) as brand,
        -- one model without an end: the family is still made
        case when count(*) = count(first_made) then min(first_made) end as first_made,
        case when count(*) = count(last_made) then max(last_made) end as last_made
    from model_list
    group by model_family
),
spans as (
    select
        model_number,
        case when count(*) = count(first_made) then min(first_made) end as first_made,
        case when count(*) = count(last_made) then max(last_made) end as last_made
    from model_list
    group by model_number
),
matched as (
    select
        j.place,
        j.job_id,
        j.opened_on,
        j.complaint_kind,
        j.serial_key,
        j.place_key,
        j.made_on_from,
        j.made_on_to,
        j.serial_candidates,
        j.purchased_on,
        j.opened_on - (j.age_stated_years * 365.25)::integer as stated_on,
        coalesce(x.model_number, nullif(upper(trim(j.model_raw)), '')) as model_number,
        x.model_family,
        case when j.model_key is null or j.model_key = '' then 'unknown' else coalesce(x.basis, 'unknown') end as model_basis,
        -- what the model list says of the type beats a caller's word, which is often 'other'
        coalesce(f.appliance_type, j.appliance_type) as appliance_type,
        coalesce(f.brand, b.brand, j.brand) as brand,
        case when x.model_number is null then f.first_made else m.first_made end as first_made,
        case when x.model_number is null then f.last_made else m.last_made end as last_made
    from job_rows as j
    left join brands as b on b.typed_key = compact_key(j.brand)
    left join model_matches as x on x.brand_key = coalesce(b.brand_key, '') and x.model_raw = j.model_raw and x.model_key = j.model_key
    left join families as f using (model_family)
    left join spans as m on m.model_number = x.model_number
)
select
    *,
    -- a number sure enough to tell appliances of one place apart
    case when model_basis in ('exact', 'compact', 'confusable', 'reviewed') then model_number end as known_number
from matched
