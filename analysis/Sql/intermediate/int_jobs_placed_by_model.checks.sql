-- One row if this table and int_jobs_without_serial do not hold the same number of jobs, and one per row without a
-- place.
select 'counts differ' as fault, own.n as number_of_rows
from (select count(*) as n from int_jobs_placed_by_model) as own
cross join (select count(*) as n from int_jobs_without_serial) as others
where own.n <> others.n
union all
select 'has no place', 1
from int_jobs_placed_by_model
where place is null
