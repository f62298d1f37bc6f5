-- One row unless there is exactly one day.
select 'not one row' as fault, count(*) as number_of_rows
from int_as_of
having count(*) <> 1
