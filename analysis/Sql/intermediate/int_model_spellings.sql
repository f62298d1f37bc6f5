-- One row per spelling of brand, type and model on jobs or in the register, with the number of times it occurs.
select brand, appliance_type, model_raw, model_key, translate(model_key, 'OIL', '011') as model_confusable, count(*) as times
from (
    select brand, appliance_type, model_raw, model_key from int_job_rows
    union all
    select brand, appliance_type, model_raw, model_key from staged_units
)
group by all
