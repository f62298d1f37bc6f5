-- One row per address and appliance type with appliances: the appliance, or null if there are several.
with apart as (
    select place_key, appliance_type, unit_id from int_place_units where appliance_type is not null
    union
    select place_key, appliance_type, unit_id from int_jobs_placed_by_model where unit_id is not null and appliance_type is not null
),
counted as (
    select *, count(*) over (partition by place_key, appliance_type) as units from apart
)
select distinct place_key, appliance_type, case when units = 1 then unit_id end as unit_id
from counted
