-- One row per catalog number a typed number may stand for, surest first: exact, what the owner answered, compact,
-- alias,
-- confusable.
with candidates as (
    select part_number, 'exact' as basis, 1 as place from parts where upper(part_number) = upper(trim($typed))
    union all
    select part_number, 'alias', 2 from part_aliases where basis = 'reviewed' and compact_key(alias) = $typed_key
    union all
    select part_number, 'compact', 3 from parts where compact_key(part_number) = $typed_key
    union all
    select part_number, 'alias', 4 from part_aliases where compact_key(alias) = $typed_key
    union all
    select part_number, 'confusable', 5 from parts where translate(compact_key(part_number), 'OIL', '011') = translate($typed_key, 'OIL', '011')
    union all
    select part_number, 'confusable', 5 from part_aliases where translate(compact_key(alias), 'OIL', '011') = translate($typed_key, 'OIL', '011')
),
closest as (
    select distinct part_number, basis from candidates qualify place = min(place) over ()
)
select c.part_number, p.current_number, c.basis
from closest as c
join parts as p using (part_number)
order by c.part_number
