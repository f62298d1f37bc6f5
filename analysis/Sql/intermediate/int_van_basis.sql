-- One row: what a job's van is, and how many vans are listed. named: the log names it, or the settings name its technician's.
-- dealt: vans are listed, but no job tells its van. Else each technician stands for one; without technicians, or with so many
-- that they are no shop's, one van stands for all jobs.
select
    case
        when exists (from staged_jobs where van is not null) then 'named'
        when exists (from staged_jobs as j join int_crew_vans as c on c.technician = lower(trim(j.technician))) then 'named'
        when exists (from int_listed_vans) then 'dealt'
        when count(distinct technician) between 1 and 200 then 'technician'
        else 'one'
    end as van_basis,
    (select count(*) from int_listed_vans) as vans
from staged_jobs
