-- One row per supplier's own number for a part.
select supplier, alias, part_number, basis, source_file, source_line
from int_part_aliases
order by supplier, alias_key, part_number, basis, source_file, source_line
