-- One row per group with a wait below zero or no line.
select supplier, grouping_kind, member, days, lines
from lead_days
where days < 0 or lines < 1
