-- One row per unit that appears twice, or that is used with impossible ages.
select 'unit twice' as fault, unit_id, count(*) as times
from unit_ages
group by unit_id
having count(*) > 1
union all
select 'entry not before exit', unit_id, 1
from unit_ages
where left_out is null and (entry_days is null or exit_days is null or entry_days < 0 or entry_days >= exit_days)
