-- One row per fitted component that is there twice, is not followed, or is replaced before it was fitted.
select job_id, component, 'is there twice' as fault
from int_part_followups
group by job_id, component
having count(*) > 1
union all
select job_id, component, 'is not followed'
from int_part_followups
where job_id is null or component is null or followed_days is null
union all
select job_id, component, 'is replaced before it was fitted'
from int_part_followups
where again_days <= 0
