-- One row per way and number that is not one row or has no verdict.
select way, apart, job_number
from int_job_number_tests
group by way, apart, job_number
having count(*) > 1 or way is null or not bool_and(contradicts is not null)
