-- One row per component and type that is called foreign though the tables do not limit it to other types.
select f.appliance_type, f.component, 'is not limited' as fault
from int_foreign_components as f
left join component_roles as c using (component)
where c.types is null or list_contains(string_split(c.types, '|'), f.appliance_type)
