-- One row per component and supplier: days its parts were in service, and how many were replaced again.
select component, supplier, part_days, replaced_again
from part_service
order by component, supplier
