-- One row per job without a place in the sources or a day.
select place, opened_on
from int_earlier_build_evidence
where place is null
    or opened_on is null
