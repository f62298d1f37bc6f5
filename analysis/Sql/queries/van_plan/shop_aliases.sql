-- One row per supplier and part: the supplier's own number for it.
select supplier, part_number, min(alias) as alias
from part_aliases
group by supplier, part_number
order by supplier, part_number
