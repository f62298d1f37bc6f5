-- One row per van that served a job in the $days up to $last_day.
select distinct van
from jobs
where van is not null
    and opened_on >= $last_day::date + 1 - $days::integer
order by van
