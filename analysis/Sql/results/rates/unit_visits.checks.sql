-- One row where the calls of all units are not the calls of the log that name a unit.
select counted.calls as calls_counted, known.calls as calls_known
from (select coalesce(sum(visits * units), 0) as calls from unit_visits) as counted
cross join (select count(*) as calls from jobs where unit_id is not null and opened_on <= (select last_day from int_log_window)) as known
where counted.calls <> known.calls
