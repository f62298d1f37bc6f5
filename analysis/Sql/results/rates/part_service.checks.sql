-- One row per component and supplier with more parts replaced again than there were, or parts without a day of service.
select component, supplier, parts, part_days, replaced_again
from part_service
where replaced_again > parts or part_days < parts
