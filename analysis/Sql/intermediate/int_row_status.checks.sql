-- One row per source row that is there twice or lacks its key, and one per unknown status.
select kind, source_order, source_line, 'is there twice' as fault
from int_row_status
group by kind, source_order, source_line
having count(*) > 1
union all
select kind, source_order, source_line, 'has no key'
from int_row_status
where kind is null or source_order is null or source_line is null
union all
select kind, source_order, source_line, 'has an unknown status'
from int_row_status
where status not in ('duplicate', 'replaced', 'continued')
