-- One row per brand and model number that is there twice or lacks its key.
select brand_key, model_key, listed, 'is there twice' as fault
from int_model_numbers
group by brand_key, model_key, listed
having count(*) > 1
union all
select brand_key, model_key, listed, 'has no key'
from int_model_numbers
where brand_key is null or model_key is null or listed is null
