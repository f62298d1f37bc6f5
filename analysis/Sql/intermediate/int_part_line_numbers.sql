-- One row per piece of a job with several part lines: its line number. The only line of a job is line 1.
-- Filtered by hash first: most jobs have one line, and the rows of a window are sorted.
with pieces as (
    select p.job_id, p.source_order, p.source_line, p.group_no, coalesce(c.place, 1) as piece
    from int_job_part_rows as p
    left join int_resolved_part_numbers as r on r.supplier = '' and r.raw = p.part_raw and r.typed_key = p.part_key
    left join int_current_numbers as c on c.old_number = r.part_number and (c.place = 1 or c.via = 'kit_part')
),
repeated as (
    select hash(job_id) as mark from pieces group by hash(job_id) having count(*) > 1
)
select
    source_order,
    source_line,
    group_no,
    piece,
    row_number() over (partition by job_id order by source_order, source_line, group_no, piece)::integer as line
from pieces
where hash(job_id) in (from repeated)
