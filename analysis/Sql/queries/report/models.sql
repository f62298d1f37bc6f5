-- One row per model number of a known family.
select model_number, model_family, appliance_type, brand
from models
order by model_number
