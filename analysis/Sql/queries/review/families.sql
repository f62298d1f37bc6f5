-- One row per family that was learned from its model numbers.
select
    m.model_family as learned_family,
    min(m.brand) as brand,
    min(m.appliance_type) as appliance_type,
    count(distinct m.model_number) as models,
    string_agg(distinct m.model_number, ' ' order by m.model_number) as model_numbers
from models as m
where m.family_basis = 'learned'
group by m.model_family
-- a model that is its own family asks nothing
having count(distinct m.model_number) > 1
order by models desc, learned_family
