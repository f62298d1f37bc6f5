-- One row per number that means two things, so that it is not followed.
select subject as number, fault_kind, min(message) as message, min(source_file || ':' || source_line) as example
from data_faults
where fault_kind in ('alias_of_two_parts', 'part_number_collision', 'model_number_collision', 'model_in_two_families')
group by subject, fault_kind
order by fault_kind, number
