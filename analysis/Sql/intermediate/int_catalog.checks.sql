-- One row per catalog number that is there twice or lacks its key, and one per number of no letter and no digit.
select part_number, 'is there twice' as fault
from int_catalog
group by part_number
having count(*) > 1
union all
select part_number, 'has no key'
from int_catalog
where part_number is null
union all
select part_number, 'has no letter and no digit'
from int_catalog
where part_key is null or part_key = ''
