-- One row per supplier's number and part that is there twice or lacks its key.
select supplier, alias_key, part_number, 'is there twice' as fault
from int_part_aliases
group by supplier, alias_key, part_number
having count(*) > 1
union all
select supplier, alias_key, part_number, 'has no key'
from int_part_aliases
where supplier is null or alias_key is null or part_number is null
