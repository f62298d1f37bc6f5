-- One row per job without a place or a complaint kind.
select place, complaint_kind
from int_answered_complaints
where place is null
    or complaint_kind is null
