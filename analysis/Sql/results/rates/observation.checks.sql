-- One row where the log runs backwards: no call is as old as the last day asked for.
select 'log runs backwards' as fault, log_first_day, log_last_day
from observation
where log_first_day > log_last_day
