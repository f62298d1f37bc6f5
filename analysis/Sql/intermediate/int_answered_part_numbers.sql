-- One row per typed number that the owner explained, with the catalog number it stands for.
with asked as (
    select coalesce(supplier, '') as supplier, typed, typed_key, answer, answer_key, source_file, source_line
    from review_part_numbers
    where answer_key is not null
    union all
    select '', subject, subject_key, answer, answer_key, source_file, source_line
    from review_collisions
    where fault_kind in ('alias_of_two_parts', 'part_number_collision')
)
-- where two parts share the letters and digits, only the exact writing tells which is meant
select a.supplier, a.typed, a.typed_key, c.part_number, a.source_file, a.source_line
from asked as a
join int_catalog as c on c.part_key = a.answer_key and (not c.collides or upper(trim(a.answer)) = upper(c.part_number))
order by a.supplier, a.typed_key, c.part_number, a.source_file, a.source_line
