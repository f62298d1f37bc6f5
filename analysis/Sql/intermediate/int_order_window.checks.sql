-- One row unless there is exactly one day.
select 'not one row' as fault, count(*) as number_of_rows
from int_order_window
having count(*) <> 1
