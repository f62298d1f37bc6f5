-- One row per job: the model, family, appliance type and brand it is about.
with families as (
    select model_family, mode(appliance_type order by appliance_type) as appliance_type, mode(brand order by brand) as brand
    from model_list
    group by model_family
)
select
    j.job_id,
    coalesce(x.model_number, nullif(upper(trim(j.model_raw)), '')) as model_number,
    x.model_family,
    case when j.model_key is null or j.model_key = '' then 'unknown' else coalesce(x.basis, 'unknown') end as model_basis,
    -- what the model list says of the type beats a caller's word, which is often 'other'
    coalesce(f.appliance_type, j.appliance_type) as appliance_type,
    coalesce(f.brand, j.brand) as brand,
    coalesce(m.first_made, r.first_made) as first_made,
    coalesce(m.last_made, r.last_made) as last_made
from job_rows as j
left join model_matches as x on x.brand_key = compact_key(j.brand) and x.model_raw = j.model_raw and x.model_key = j.model_key
left join families as f using (model_family)
left join (
    select model_number, min(first_made) as first_made, max(last_made) as last_made from model_list group by model_number
) as m on m.model_number = x.model_number
left join (
    select model_family, min(first_made) as first_made, max(last_made) as last_made from model_list group by model_family
) as r on r.model_family = x.model_family
