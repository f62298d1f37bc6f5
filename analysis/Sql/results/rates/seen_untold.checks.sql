-- One row per type and subject that appears twice, or expects more than can be.
select appliance_type, subject_kind, subject
from seen_untold
group by all
having count(*) > 1 or max(expected) > max(untold)
