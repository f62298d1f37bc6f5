-- One row per unit that is there twice or whose window does not lie inside the log.
select unit_windows.unit_id, 'watched outside the log' as fault
from unit_windows
cross join observation
where starts_on < log_first_day or ends_before > log_last_day + 1 or starts_on >= ends_before
union all
select unit_id, 'unit twice' as fault
from unit_windows
group by unit_id
having count(*) > 1
