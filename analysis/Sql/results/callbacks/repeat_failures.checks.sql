-- One row per share outside its interval, or missing without a reason.
select component, supplier, stretch, at_risk, replaced_again, share, lower, upper, missing
from repeat_failures
where (share is null) = (missing is null) or share not between lower and upper or replaced_again > at_risk
