-- One row per supersession arrow on the way to or from a number.
with recursive newer(number) as (
    select $number
    union
    select s.new_number from newer as n join supersessions as s on s.old_number = n.number where s.new_number is not null
),
older(number) as (
    from newer
    union
    select s.old_number from older as o join supersessions as s on s.new_number = o.number
)
select s.old_number, s.new_number, s.effective_on, s.kind, s.quantity, s.source_file, s.source_line
from supersessions as s
semi join older on older.number = s.old_number
order by s.effective_on nulls first, s.old_number, s.new_number, s.source_file, s.source_line
