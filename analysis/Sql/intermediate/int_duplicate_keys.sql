-- One row per natural-key hash that occurs on more than one source row. Rows with different hashes are different
-- things, so only rows that share one have to be compared.
with marks as (
    select job_mark(job_id) as mark from int_numbered_jobs where hash(job_number) in (from int_repeated_numbers)
    union all
    select job_part_mark(job_id, part_key, description)
    from int_numbered_job_parts
    where not with_job_row
    union all
    select order_mark(supplier, order_id, ordered_on, part_key, other_key, description)
    from staged_part_orders
    union all
    select part_mark(part_key) from staged_parts
    union all
    select supersession_mark(old_key) from staged_supersessions
    union all
    select alias_mark(alias_key) from staged_part_aliases
    union all
    select fitment_mark(part_key) from staged_fitments
    union all
    select model_mark(model_key) from staged_models
    union all
    select unit_mark(serial_key, place_key, model_key, row_hash) from staged_units
    union all
    select van_count_mark(van, part_key) from staged_van_counts
)
select mark
from marks
group by mark
having count(*) > 1
