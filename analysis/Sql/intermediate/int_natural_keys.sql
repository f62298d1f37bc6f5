-- One row per source row that shares its natural-key hash with another: the key of the thing it describes, and a hash
-- of its content.
with job_part_rows as (
    select distinct job_id, coalesce(part_key, lower(description), '') as part, row_hash, updated_on, source_order, source_line
    from int_numbered_job_parts
    where not with_job_row
        and job_part_mark(job_id, part_key, description) in (from int_duplicate_keys)
),
-- the second equal line of one file is a second part, the same line of another file is the first one again
job_part_lines as (
    select
        *,
        row_number() over (partition by source_order, job_id, part order by source_line) as nth
    from job_part_rows
),
order_lines as (
    select
        *,
        row_number() over (
            partition by source_order, supplier, order_id, ordered_on, coalesce(part_key, other_key, lower(description), '')
            order by source_line
        ) as nth
    from staged_part_orders
    where order_mark(supplier, order_id, ordered_on, part_key, other_key, description)
        in (from int_duplicate_keys)
),
-- rows of one file with the same job cells are one telling of the job, each with parts of it; which cells, the catalog
-- of fields says. Where a job stands on a row for each part, the second equal row is a second part.
job_rows_told as (
    select
        j.* replace (
            case when s.one_part_per_row then max(updated_on) over (partition by source_order, job_id, told) else updated_on end as updated_on
        ),
        max(j.source_line) over (partition by source_order, job_id, told) as told_line,
        case when s.one_part_per_row
            then row_number() over (partition by source_order, job_id, row_hash order by source_line)
            else 1 end as nth
    from (
        select
            *,
            hash(*columns(c -> list_contains(getvariable('job_identity'), c))) as told,
            len(string_split(concat_ws(chr(31), *columns(c -> list_contains(getvariable('job_identity'), c))), chr(31))) as filled
        from int_numbered_jobs
        where job_mark(job_id) in (from int_duplicate_keys)
    ) as j
    join source_files as s using (source_order)
),
part_writings as (
    select source_order, part_key, count(distinct upper(trim(part_raw))) > 1 as collides
    from staged_parts
    group by source_order, part_key
)
select
    'jobs' as kind, job_id as row_key, row_hash || nth as row_hash, updated_on as told_on, told, filled, told_line, source_order, source_line
from job_rows_told
union all
select 'job_parts', concat_ws('|', job_id, part, nth), row_hash, updated_on, 0, 0, 0, source_order, source_line
from job_part_lines
union all
select
    'part_orders', concat_ws('|', supplier, order_id, ordered_on, coalesce(part_key, other_key, lower(description), ''), nth),
    row_hash, updated_on, 0, 0, 0, source_order, source_line
from order_lines
union all
select
    'parts', concat_ws('|', p.part_key, coalesce(p.supplier, ''), case when w.collides then upper(trim(p.part_raw)) end),
    p.row_hash, null, 0, 0, 0, p.source_order, p.source_line
from staged_parts as p
join part_writings as w using (source_order, part_key)
where part_mark(p.part_key) in (from int_duplicate_keys)
union all
select 'supersessions', concat_ws('|', old_key, coalesce(new_key, ''), kind), row_hash, null, 0, 0, 0, source_order, source_line
from staged_supersessions
where supersession_mark(old_key) in (from int_duplicate_keys)
union all
select 'part_aliases', concat_ws('|', supplier, alias_key), row_hash, null, 0, 0, 0, source_order, source_line
from staged_part_aliases
where alias_mark(alias_key) in (from int_duplicate_keys)
union all
select
    'fitments', concat_ws('|', coalesce(model_key, ''), coalesce(model_pattern, ''), coalesce(model_family, ''), part_key),
    row_hash, null, 0, 0, 0, source_order, source_line
from staged_fitments
where fitment_mark(part_key) in (from int_duplicate_keys)
union all
select 'models', concat_ws('|', coalesce(upper(brand), ''), model_key), row_hash, null, 0, 0, 0, source_order, source_line
from staged_models
where model_mark(model_key) in (from int_duplicate_keys)
union all
select
    'units', coalesce(serial_key, concat_ws('|', place_key, coalesce(model_key, ''), row_hash)),
    row_hash, null, 0, 0, 0, source_order, source_line
from staged_units
where unit_mark(serial_key, place_key, model_key, row_hash) in (from int_duplicate_keys)
union all
select 'van_counts', concat_ws('|', van, part_key), row_hash, counted_on::timestamp, 0, 0, 0, source_order, source_line
from staged_van_counts
where van_count_mark(van, part_key) in (from int_duplicate_keys)
