-- One row if this table and int_jobs_placed_by_model do not hold the same number of jobs, and one per row without a
-- place.
select 'counts differ' as fault, own.n as number_of_rows
from (select count(*) as n from int_inferred_units) as own
cross join (select count(*) as n from int_jobs_placed_by_model) as others
where own.n <> others.n
union all
select 'has no place', 1
from int_inferred_units
where place is null
