-- A component of the shop's own has one row, a name, and no name that a table has.
select component, 'is there twice' as fault from int_own_components group by component having count(*) > 1
union all
select component, 'has no name' from int_own_components where component is null
union all
select component, 'is in a table' from int_own_components semi join component_roles using (component)
