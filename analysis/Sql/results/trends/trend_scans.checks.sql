-- One row per scanned month that appears twice or alarms more often than it tests.
select month, count(*) as times
from trend_scans
group by month
having count(*) > 1 or any_value(month_alarms) > any_value(series_tested)
