-- One row per spelling that is written nowhere.
select brand, appliance_type, model_raw, times
from int_model_spellings
where times is null
    or times < 1
