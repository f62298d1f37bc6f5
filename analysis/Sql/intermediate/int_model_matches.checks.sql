-- One row per brand and model text that is there twice or lacks its key, and one per text without a family.
select brand_key, model_raw, model_key, 'is there twice' as fault
from int_model_matches
group by brand_key, model_raw, model_key
having count(*) > 1
union all
select brand_key, model_raw, model_key, 'has no key'
from int_model_matches
where brand_key is null or model_raw is null or model_key is null
union all
select brand_key, model_raw, model_key, 'has no family'
from int_model_matches
where model_family is null or basis is null
