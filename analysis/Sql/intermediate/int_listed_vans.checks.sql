-- One row per van that stands twice or has no name
select van
from int_listed_vans
group by van
having count(*) > 1 or van is null
