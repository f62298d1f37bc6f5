-- One row per supplier's number that stands twice for one part.
select supplier, alias, part_number from part_aliases group by supplier, alias, part_number having count(*) > 1
