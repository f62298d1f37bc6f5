-- One row per fault of shelf_levels: a level or use below 0, a ratio outside 0 to 1, a part listed twice.
select part_number, 'numbers' as fault
from shelf_levels
where reorder_point < 0 or pieces_per_month < 0 or expected_missing < 0 or critical_ratio not between 0 and 1
union all
select part_number, 'twice'
from shelf_levels
group by part_number
having count(*) > 1
