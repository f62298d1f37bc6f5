-- One row per fault of next_parts: no pieces, or a move the wrong way.
select van, part_number
from next_parts
where quantity < 1
    or move not in ('add', 'drop')
    or (move = 'add' and jobs_per_year < -1e-9)
    or (move = 'drop' and jobs_per_year > 1e-9)
