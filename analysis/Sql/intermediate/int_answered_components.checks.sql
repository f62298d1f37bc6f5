-- One row per description that is there twice or lacks its key, and one without a component.
select description, 'is there twice' as fault
from int_answered_components
group by description
having count(*) > 1
union all
select description, 'has no key'
from int_answered_components
where description is null
union all
select description, 'has no component'
from int_answered_components
where component is null
