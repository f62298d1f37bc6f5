-- One row per way in which brand, type and model are written on jobs or in the register, as often as they are.
select brand, appliance_type, model_raw, model_key, translate(model_key, 'OIL', '011') as model_confusable, count(*) as times
from (
    select brand, appliance_type, model_raw, model_key from int_job_rows
    union all
    select brand, appliance_type, model_raw, model_key from staged_units
)
group by all
