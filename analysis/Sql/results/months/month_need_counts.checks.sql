-- One row per month whose needs do not add up to its calls of known cause.
select month, sum(calls) as calls, any_value(cause_known) as cause_known
from month_need_counts
group by month
having sum(calls) <> any_value(cause_known)
