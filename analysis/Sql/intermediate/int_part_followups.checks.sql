-- One row per replaced component that is there twice or fails before it was fitted.
select job_id, component, 'replaced twice on one job' as fault
from int_part_followups
group by job_id, component
having count(*) > 1
union all
select job_id, component, 'fails before it was fitted' as fault
from int_part_followups
where again_days <= 0
