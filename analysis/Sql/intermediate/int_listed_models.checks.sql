-- One row per brand and model number that is there twice or lacks its key, and one per model without a family.
select brand_key, model_key, 'is there twice' as fault
from int_listed_models
group by brand_key, model_key
having count(*) > 1
union all
select brand_key, model_key, 'has no key'
from int_listed_models
where brand_key is null or model_key is null
union all
select brand_key, model_key, 'has no family'
from int_listed_models
where model_family is null or family_basis is null
