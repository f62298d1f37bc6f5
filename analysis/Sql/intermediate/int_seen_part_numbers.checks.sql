-- One row per part number that is there twice or lacks its key.
select part_key, 'is there twice' as fault
from int_seen_part_numbers
group by part_key
having count(*) > 1
union all
select part_key, 'has no key'
from int_seen_part_numbers
where part_key is null
