-- One row per model of the list, with the key a typed model is compared by.
select distinct model_key, model_number from int_listed_models order by model_key, model_number
