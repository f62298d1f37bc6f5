-- One row per component, supplier and stretch of days: parts at risk and those replaced again.
select component, supplier, stretch, at_risk, again
from repeat_counts
