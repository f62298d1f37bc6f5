-- One row per appliance that stands twice, or was seen or built backwards.
select unit_id, 'stands twice' as fault from units group by unit_id having count(*) > 1
union all
select unit_id, 'runs backwards' from units where made_from > made_to or seen_first > seen_last
