-- One row per technician of one van only, in lower case: the van that the shop's settings give.
select lower(trim(technician)) as technician, min(van) as van
from van_crews
where technician is not null
group by lower(trim(technician))
having count(distinct van) = 1
