-- One row per description that does not count as exactly one component.
select description, 'is there twice' as fault from int_worded_components group by description having count(*) > 1
union all
select description, 'has no component' from int_worded_components where component is null
