-- One row per model number of the model list.
select model_number, model_family, appliance_type, brand
from models
order by model_number
