-- One row per file that was read; read = loaded + duplicate + replaced + rejected.
with staged as (
    select source_order, count(*) as staged from staged_jobs group by source_order
    union all
    select source_order, count(distinct source_line) from staged_job_parts where not with_job_row group by source_order
    union all
    select source_order, count(*) from staged_part_orders group by source_order
    union all
    select source_order, count(*) from staged_parts group by source_order
    union all
    select source_order, count(*) from staged_supersessions group by source_order
    union all
    select source_order, count(*) from staged_part_aliases group by source_order
    union all
    select source_order, count(*) from staged_fitments group by source_order
    union all
    select source_order, count(*) from staged_models group by source_order
    union all
    select source_order, count(*) from staged_units group by source_order
    union all
    select source_order, count(*) from staged_van_counts group by source_order
),
statuses as (
    select
        source_order,
        count(*) filter (status = 'duplicate') as duplicate,
        count(*) filter (status = 'replaced') as replaced
    from int_row_status
    group by source_order
),
lost as (
    select source_order, count(*) as lost from int_orphan_part_lines group by source_order
),
-- a mended row stands for the refused one
mended_lines as (
    select m.source_order, m.source_line
    from mended_rows as m
    semi join rejected_rows as r on r.source_order = m.source_order and r.source_line = m.source_line
    union all
    select source_order, source_line from int_mended_part_lines
),
mended as (
    select source_order, count(*) as mended from mended_lines group by source_order
)
select
    s.source_file,
    s.content_hash,
    s.kind,
    s.rows_read,
    coalesce(r.staged, 0) - coalesce(f.duplicate, 0) - coalesce(f.replaced, 0) - coalesce(l.lost, 0) as loaded,
    coalesce(f.duplicate, 0) as duplicate,
    coalesce(f.replaced, 0) + coalesce(m.mended, 0) as replaced,
    s.rejected + coalesce(l.lost, 0) - coalesce(m.mended, 0) as rejected,
    g.languages
from source_files as s
left join staged as r using (source_order)
left join statuses as f using (source_order)
left join lost as l using (source_order)
left join mended as m using (source_order)
left join file_languages as g using (source_order)
order by s.source_order
