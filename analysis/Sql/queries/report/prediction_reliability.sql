-- One row per group of answers of like confidence.
select jobs, said, happened, lower, upper
from prediction_reliability
where slice = 'all'
order by bin
