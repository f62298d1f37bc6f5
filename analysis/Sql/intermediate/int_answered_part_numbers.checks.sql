-- One row per answer without a typed number or a catalog number.
select typed_key, part_number, source_file, source_line
from int_answered_part_numbers
where typed_key is null
    or part_number is null
