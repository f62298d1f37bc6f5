-- One row per group with more repeats than parts at risk.
select component, supplier, stretch, at_risk, again
from repeat_counts
where again > at_risk or at_risk < 1
