-- One row per van that served a job in the $days before $as_of (null: the newest call).
select distinct van
from jobs
where van is not null
    and opened_on >= coalesce($as_of::date, (select max(opened_on) from jobs)) + 1 - $days::integer
order by van
