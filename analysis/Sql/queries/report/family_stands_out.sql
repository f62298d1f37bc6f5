-- One row per family and component that takes a larger share of the family's calls than its ages explain; three a
-- family.
select model_family, subject as component, ratio
from family_comparison
where stands_out and basis = 'share_of_calls' and subject_kind = 'component' and subject not in ('none', 'other_part')
qualify row_number() over (partition by model_family order by ratio desc, subject) <= 3
order by model_family, ratio desc, subject
