-- One row per family and component that is needed more often than the family's ages explain.
select model_family, subject as component, ratio, basis
from family_comparison
where stands_out and subject_kind = 'component' and subject not in ('none', 'other_part')
order by model_family, basis, ratio desc, subject
