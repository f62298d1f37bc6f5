-- One row: what was looked at in the month; none when it was not scanned.
select series_tested, series_summed, false_share, false_drifts
from trend_scans
where "month" = $month::date
