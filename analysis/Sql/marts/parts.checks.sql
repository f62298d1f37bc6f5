-- One row per catalog number that stands twice, or whose size gives no space.
select part_number, 'stands twice' as fault from parts group by part_number having count(*) > 1
union all
select part_number, 'takes no space' from parts where space_units <= 0
