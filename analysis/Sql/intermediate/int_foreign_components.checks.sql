-- A component of the tables is foreign only to types that it does not name.
select f.appliance_type, f.component, 'is not limited' as fault
from int_foreign_components as f
left join component_roles as c using (component)
where c.types is null or list_contains(string_split(c.types, '|'), f.appliance_type)
