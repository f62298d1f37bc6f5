-- One row per model family and part that a list says fit each other; what was only seen on jobs is not in it.
select model_family, part_number
from fitments
where basis in ('listed', 'both')
order by model_family, part_number
