-- One row per file that was read; read = loaded + duplicate + replaced + rejected.
with lost as (
    select source_order, source_line from lost_rows
),
counted as (
    select
        f.source_order,
        count(*) filter (f.fate = 'loaded' and l.source_line is null) as loaded,
        count(*) filter (f.fate = 'duplicate') as duplicate,
        count(*) filter (f.fate = 'replaced') as replaced,
        count(l.source_line) as lost
    from row_fates as f
    left join lost as l on f.kind = 'job_parts' and l.source_order = f.source_order and l.source_line = f.source_line
    group by f.source_order
)
select
    s.source_file,
    s.content_hash,
    s.kind,
    s.rows_read,
    coalesce(c.loaded, 0) as loaded,
    coalesce(c.duplicate, 0) as duplicate,
    coalesce(c.replaced, 0) as replaced,
    s.rejected + coalesce(c.lost, 0) as rejected
from source_files as s
left join counted as c using (source_order)
order by s.source_order
