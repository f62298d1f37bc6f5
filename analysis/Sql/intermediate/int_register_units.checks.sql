-- One row per register row that is there twice or lacks its key, and one per appliance without an identifier.
select source_order, source_line, 'is there twice' as fault
from int_register_units
group by source_order, source_line
having count(*) > 1
union all
select source_order, source_line, 'has no key'
from int_register_units
where source_order is null or source_line is null
union all
select source_order, source_line, 'has no identifier'
from int_register_units
where unit_id is null
