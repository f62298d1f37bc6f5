-- One row per model of the list, with the key a typed model is compared by.
select distinct model_key as key, model_number as number
from int_listed_models
order by key, number
