-- One row per part description that the tables do not name, with the component that it counts as: the owner's answer, else
-- the shop's own, else the one of the tables that it most likely means.
select
    n.description,
    coalesce(a.component, o.component, n.likely_component) as component,
    a.component is not null as answered
from part_names as n
left join int_answered_components as a using (description)
left join int_own_components as o on o.component = n.own_component
where coalesce(a.component, o.component, n.likely_component) is not null
order by n.description
