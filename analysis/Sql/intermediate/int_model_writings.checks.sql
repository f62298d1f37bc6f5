-- One row per brand and number, with a usual writing that is its own usual writing.
select brand_key, model_key, 'is there twice' as fault from int_model_writings group by brand_key, model_key having count(*) > 1
union all
select brand_key, model_key, 'has no usual writing' from int_model_writings where usual_key is null or model_key is null
