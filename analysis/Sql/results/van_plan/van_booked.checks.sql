-- One row per fault of van_booked: a chance outside 0 to 1, chances of a job beyond 1, a count below its least.
select job_id, 'chance' as fault
from van_booked
where chance not between 0 and 1 or quantity < 1 or planned < 0 or aboard < 0 or take_along not between 0 and quantity
union all
select job_id, 'sum'
from van_booked
group by job_id
having sum(chance) > 1.000001
