-- One row per bin whose shares are impossible.
select slice, bin, jobs, said, happened
from prediction_reliability
where jobs <= 0 or said not between 0 and 1.000001 or happened not between 0 and 1 or "from" > "to"
