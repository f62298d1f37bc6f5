-- One row where the window is empty or runs backwards.
select 'log window runs backwards' as fault, first_day, last_day
from observation
where first_day > last_day
