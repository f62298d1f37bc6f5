-- One row per appliance type and component of the tables that is limited to other types, where the shop fits it at least
-- three times: it counts apart from the component of those types.
with known_types as (
    select distinct unnest(string_split(types, '|')) as appliance_type from component_roles where types is not null
)
select f.appliance_type, c.component
from int_part_pieces as f
join known_types as k using (appliance_type)
left join parts as p on p.part_number = f.current_number
left join int_worded_components as w on w.description = lower(trim(f.description))
join component_roles as c on c.component = coalesce(p.component, f.component, w.component)
where c.types is not null and not list_contains(string_split(c.types, '|'), f.appliance_type)
group by f.appliance_type, c.component
having count(*) >= 3
