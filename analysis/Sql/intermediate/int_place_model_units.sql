-- One row per address and model with appliances: the appliance, or null if there are several.
-- Counted, never collected into lists: a list cannot be spilled.
with apart as (
    select distinct place_key, model_number, unit_id from int_place_units where model_number is not null
),
counted as (
    select *, count(*) over (partition by place_key, model_number) as units from apart
)
select distinct place_key, model_number, case when units = 1 then unit_id end as unit_id
from counted
