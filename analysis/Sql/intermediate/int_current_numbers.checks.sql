-- One row per old number and place that is there twice or lacks its key, and one per number that stands for nothing.
select old_number, place, 'is there twice' as fault
from int_current_numbers
group by old_number, place
having count(*) > 1
union all
select old_number, place, 'has no key'
from int_current_numbers
where old_number is null or place is null
union all
select old_number, place, 'stands for nothing'
from int_current_numbers
where current_number is null or quantity < 1
