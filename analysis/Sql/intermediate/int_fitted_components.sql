-- One row per job and component fitted on a finished repair of a known appliance.
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
where component is not null
group by job_id, component, unit_id, fitted_on, appliance_type, model_family
