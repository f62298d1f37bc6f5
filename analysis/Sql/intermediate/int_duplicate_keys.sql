-- One row per natural-key hash that occurs on more than one source row. Rows with different hashes are different
-- things, so only rows that share one have to be compared.
with marks as (
    select hash('jobs', job_id) as mark from int_numbered_jobs where hash(job_number) in (from int_repeated_numbers)
    union all
    select hash('job_parts', concat_ws('|', job_id, coalesce(part_key, lower(description), '')))
    from int_numbered_job_parts
    where not with_job_row
    union all
    select hash('part_orders', concat_ws('|', supplier, order_id, ordered_on, coalesce(part_key, other_key, lower(description), '')))
    from staged_part_orders
    union all
    select hash('parts', part_key) from staged_parts
    union all
    select hash('supersessions', old_key) from staged_supersessions
    union all
    select hash('part_aliases', alias_key) from staged_part_aliases
    union all
    select hash('fitments', part_key) from staged_fitments
    union all
    select hash('models', model_key) from staged_models
    union all
    select hash('units', coalesce(serial_key, concat_ws('|', place_key, coalesce(model_key, ''), row_hash))) from staged_units
    union all
    select hash('van_counts', concat_ws('|', van, part_key)) from staged_van_counts
)
select mark
from marks
group by mark
having count(*) > 1
