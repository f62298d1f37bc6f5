-- One row per technician of the job log, the one with most jobs first.
select technician
from jobs
where technician is not null
group by technician
order by count(*) desc, technician
