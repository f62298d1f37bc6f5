-- One row per component of the shop's own that is there twice, has no name, or has the name of one in the tables.
select component, 'is there twice' as fault from int_own_components group by component having count(*) > 1
union all
select component, 'has no name' from int_own_components where component is null
union all
select component, 'is in a table' from int_own_components semi join component_roles using (component)
