-- One row per component: of the tables, or of the shop's own; whether it is the main repair or goes with one.
select component, role, types, 'table' as basis from component_roles
union all
select component, role, null::varchar, 'own' from int_own_components
