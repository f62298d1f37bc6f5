-- One row per appliance that is there twice or lacks its key, and one per interval that runs backwards.
select unit_key, 'is there twice' as fault
from int_answered_build_dates
group by unit_key
having count(*) > 1
union all
select unit_key, 'has no key'
from int_answered_build_dates
where unit_key is null
union all
select unit_key, 'runs backwards'
from int_answered_build_dates
where made_from > made_to
