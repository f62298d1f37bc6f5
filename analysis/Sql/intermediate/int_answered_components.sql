-- One row per part description that the owner assigned to a known component.
select r.description, min(r.component) as component
from review_components as r
semi join component_roles as c using (component)
group by r.description
having count(distinct r.component) = 1
order by r.description
