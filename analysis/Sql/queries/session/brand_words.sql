-- One row per brand that the staged files name.
select distinct brand
from (
    select brand from staged_jobs
    union all
    select brand from staged_units
    union all
    select brand from staged_models
)
where brand is not null
order by brand
