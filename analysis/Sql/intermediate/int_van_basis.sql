-- One row: what a job's van is. named: the log, the counts or the shop's settings name vans. Else each technician stands
-- for one; without technicians, or with so many that they are no shop's, one van stands for all jobs.
select
    case
        when coalesce(getvariable('vans_listed'), false)
            or exists (from staged_jobs where van is not null)
            or exists (from staged_van_counts where van is not null) then 'named'
        when count(distinct technician) between 1 and 200 then 'technician'
        else 'one'
    end as van_basis
from staged_jobs
