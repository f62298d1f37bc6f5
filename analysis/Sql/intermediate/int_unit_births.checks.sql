-- One row per appliance that is there twice, has a birthday without a source, or is born after it was installed.
select unit_id, 'is there twice' as fault
from int_unit_births
group by unit_id
having count(*) > 1
union all
select unit_id, 'birthday and source do not agree'
from int_unit_births
where (born_on is null) <> (born_basis is null)
union all
select unit_id, 'born after it was installed'
from int_unit_births
join units using (unit_id)
where born_on > installed_on
union all
select unit_id, 'is no appliance'
from int_unit_births
where unit_id is null
