-- One row per older number of a current part.
select current_number, part_number as old_number
from parts
where part_number <> current_number
order by current_number, old_number
