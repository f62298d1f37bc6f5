-- One row per part description that the owner assigned to a known component. An answer for a component of the shop's own
-- holds for all its descriptions.
with answered as (
    select r.description, min(r.component) as component
    from review_components as r
    semi join int_component_roles as c using (component)
    group by r.description
    having count(distinct r.component) = 1
),
named as (
    select a.description, a.component, n.own_component
    from answered as a
    left join part_names as n using (description)
),
groups as (
    select own_component, min(component) as component
    from named
    semi join int_own_components as o on o.component = named.own_component
    group by own_component
    having count(distinct component) = 1
)
select
    coalesce(a.description, n.description) as description,
    coalesce(a.component, g.component) as component
from part_names as n
join groups as g using (own_component)
full join named as a on a.description = n.description
order by description
