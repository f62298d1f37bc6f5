-- One row where the log has no day, or ends before it begins: no call is as old as the last day asked for.
select 'log ends before it begins' as fault, first_day, last_day
from int_log_window
where first_day > last_day
union all
select 'log has no day', first_day, last_day
from int_log_window
where first_day is null or last_day is null
