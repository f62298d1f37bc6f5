-- One row per learned family that is there twice or lacks its key, and one without a name.
select learned_family, 'is there twice' as fault
from int_answered_families
group by learned_family
having count(*) > 1
union all
select learned_family, 'has no key'
from int_answered_families
where learned_family is null
union all
select learned_family, 'has no name'
from int_answered_families
where model_family is null
