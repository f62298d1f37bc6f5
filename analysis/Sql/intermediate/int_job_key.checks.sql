-- One row per load with a key but without the contradictions that call for one.
select way, numbers
from int_job_key
where way is null
    or numbers is null
    or numbers < 1
    or unexplained is null
    or files is null
