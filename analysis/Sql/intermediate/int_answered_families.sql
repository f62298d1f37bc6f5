-- One row per learned model family that the owner renamed.
select learned_family, min(model_family) as model_family
from review_families
group by learned_family
having count(distinct model_family) = 1
order by learned_family
