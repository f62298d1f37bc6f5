-- One row if no job tells its van: what stands for it, dealt, technician or one.
select distinct van_basis
from jobs
where van_basis <> 'named'
