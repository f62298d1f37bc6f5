-- One row per component that has not exactly one role.
select component, 'is there twice' as fault from int_component_roles group by component having count(*) > 1
union all
select component, 'has no role' from int_component_roles where role is null
