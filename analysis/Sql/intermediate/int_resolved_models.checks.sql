-- One row per spelling that is there twice or lacks its key, and one per spelling without a basis.
select writing, 'is there twice' as fault
from int_resolved_models
group by writing
having count(*) > 1
union all
select writing, 'has no key'
from int_resolved_models
where writing is null
union all
select writing, 'has no basis'
from int_resolved_models
where model_basis is null
