-- One row per part that was fitted up to $last_day: the day of the newest visit that used it, whatever the visit was for and
-- whichever van made it.
select p.part_number, max(j.opened_on) as last_used_on
from told_part_lines() as p
join jobs as j using (job_id)
where p.part_number is not null and j.opened_on <= $last_day::date
group by p.part_number
order by p.part_number
