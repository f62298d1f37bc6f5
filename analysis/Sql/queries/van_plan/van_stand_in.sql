-- One row if no van is named: what stands for vans, technician or one.
select distinct van_basis
from jobs
where van_basis <> 'named'
