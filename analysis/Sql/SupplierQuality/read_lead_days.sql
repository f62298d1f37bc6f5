-- One row per supplier, group, wait and ending: order lines.
select supplier, grouping_kind, member, days, arrived, lines
from lead_days
order by supplier, grouping_kind, member, days, arrived
