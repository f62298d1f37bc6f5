-- One row unless there is exactly one number of days, above zero.
select 'not one window' as fault, count(*) as number_of_rows, min(days) as days
from int_early_window
having count(*) <> 1 or count(days) <> 1 or min(days) < 1
