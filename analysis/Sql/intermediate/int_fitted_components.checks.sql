-- One row per component of a job that is there twice or lacks its key, and one without an appliance or a day.
select job_id, component, 'is there twice' as fault
from int_fitted_components
group by job_id, component
having count(*) > 1
union all
select job_id, component, 'has no key'
from int_fitted_components
where job_id is null or component is null
union all
select job_id, component, 'has no appliance or no day'
from int_fitted_components
where unit_id is null or fitted_on is null
