-- One row per hash that is missing or not one row.
select mark
from int_repeated_numbers
group by mark
having count(*) > 1 or mark is null
