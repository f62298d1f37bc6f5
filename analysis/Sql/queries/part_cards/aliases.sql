-- One row per supplier's own number of a part, old numbers of it included.
select a.supplier, a.alias, a.part_number, a.basis
from part_aliases as a
join parts as p using (part_number)
where p.current_number = $number
order by a.supplier, a.part_number, a.alias
