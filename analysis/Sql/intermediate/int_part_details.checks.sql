-- One row per catalog number that is there twice or lacks its key.
select part_number, 'is there twice' as fault
from int_part_details
group by part_number
having count(*) > 1
union all
select part_number, 'has no key'
from int_part_details
where part_number is null
