-- One row per fault of van_changes: no pieces, a move without the other van, a return without its day, moves that do
-- not
-- balance.
select van, part_number, 'row' as fault
from van_changes
where quantity < 1
    or (action in ('move_out', 'move_in') and (other_van is null or other_van = van))
    or (action = 'send_back' and "by" is null)
union all
select 'all', part_number, 'moves'
from van_changes
group by part_number
having sum(case action when 'move_out' then quantity when 'move_in' then -quantity else 0 end) <> 0
