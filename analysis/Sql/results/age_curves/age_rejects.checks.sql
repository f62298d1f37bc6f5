-- One row per entry without a reason.
select unit_id
from age_rejects
where reason is null
