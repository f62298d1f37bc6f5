-- One row where the log ends before it begins.
select 'log ends before it begins' as fault, first_day, last_day
from log_window
where first_day > last_day
