-- One row per typed number of a supplier that is there twice or lacks its key, and one resolved to nothing.
select supplier, raw, typed_key, 'is there twice' as fault
from int_resolved_part_numbers
group by supplier, raw, typed_key
having count(*) > 1
union all
select supplier, raw, typed_key, 'has no key'
from int_resolved_part_numbers
where supplier is null or raw is null or typed_key is null
union all
select supplier, raw, typed_key, 'is resolved to nothing'
from int_resolved_part_numbers
where part_number is null
