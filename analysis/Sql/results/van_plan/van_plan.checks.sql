-- One row per fault of van_plan: a target of nothing, a minimum above it, a price or space below 0, a part listed
-- twice.
select van, part_number, 'numbers' as fault
from van_plan
where target < 1 or minimum < 1 or minimum > target or price < 0 or space < 0 or pieces_per_year < 0
union all
select van, part_number, 'twice'
from van_plan
group by van, part_number
having count(*) > 1
