-- One row per prefix that is no part of its model number.
select brand_key, model_key, prefix
from int_model_prefixes
where prefix is null
    or rest_length is null
    or rest_length < 1
