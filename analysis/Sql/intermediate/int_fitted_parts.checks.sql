-- One row per part line that is there twice or lacks its key, and one without an appliance or a day.
select job_id, line, 'is there twice' as fault
from int_fitted_parts
group by job_id, line
having count(*) > 1
union all
select job_id, line, 'has no key'
from int_fitted_parts
where job_id is null or line is null
union all
select job_id, line, 'has no appliance or no day'
from int_fitted_parts
where unit_id is null or fitted_on is null
