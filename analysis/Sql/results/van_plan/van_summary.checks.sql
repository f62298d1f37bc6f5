-- One row per fault of van_summary: over a limit, a share outside 0 to 1, more finished than booked, a van listed
-- twice.
select van, 'limits' as fault
from van_summary
where money_used > budget or space_used > space + 1e-6
union all
select van, 'shares'
from van_summary
where completion not between 0 and 1.000001 or completion_empty > completion + 1e-9 or bound_gap not between 0 and 1
union all
select van, 'booked'
from van_summary
where booked_finished not between 0 and booked_jobs + 1e-6
union all
select van, 'counted'
from van_summary
where completion_counted is not null and money_counted is null or money_counted < 0
union all
select van, 'twice'
from van_summary
group by van
having count(*) > 1
