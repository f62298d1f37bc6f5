-- One row per number of a price list that stands for work, travel or a fee, by its words or by the group it is listed in.
select p.part_key
from staged_parts as p
left join part_names as d on d.description = lower(trim(p.description))
left join part_names as g on g.description = replace(p.component, '_', ' ')
where p.part_key <> ''
group by p.part_key
-- a list may call a group of parts "service": words that name a component weigh more
having bool_and(coalesce(d.role = 'charge', false) or (coalesce(g.role = 'charge', false) and d.likely_component is null))
