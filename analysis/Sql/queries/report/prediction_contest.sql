-- One row per contender, best first.
select contender, what, jobs, log_loss, ships
from prediction_contest
order by log_loss, contender
