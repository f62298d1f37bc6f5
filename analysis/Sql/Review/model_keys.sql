-- One row per model of the list, with the key a typed model is compared by.
select distinct model_key, model_number from model_list order by model_key, model_number
