-- One row per part line that stands twice, or is resolved without a number, or the other way round.
select job_id, line, 'stands twice' as fault from job_parts group by job_id, line having count(*) > 1
union all
select job_id, line, 'number and basis disagree'
from job_parts
where (part_number is null) <> (part_basis = 'unresolved') or (part_number is null) <> (fitted_number is null)
