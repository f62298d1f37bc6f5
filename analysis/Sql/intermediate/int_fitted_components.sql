-- One row per finished repair of a known unit and the component at fault in it, if it was fitted. What was fitted along with
-- it, an accessory or a second part, did not fail and is left out.
select
    job_id,
    component,
    unit_id,
    coalesce(min(supplier), 'unknown') as supplier,
    min(fitted_number) as fitted_number,
    fitted_on,
    appliance_type,
    model_family
from int_fitted_parts
where is_cause
group by job_id, component, unit_id, fitted_on, appliance_type, model_family
