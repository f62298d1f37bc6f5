-- One row per number typed on orders, jobs or van counts that no catalog number explains, most frequent first.
with typed as (
    select '' as supplier, trim(part_raw) as number, part_key as typed_key, description, source_file, source_line, 'job' as place
    from int_job_part_rows
    where part_key <> ''
    union all
    select o.supplier, trim(o.part_raw), o.part_key, o.description, o.source_file, o.source_line, 'order'
    from staged_part_orders as o
    anti join int_row_status as f using (source_order, source_line)
    where o.part_key <> ''
        and not exists (
            select 1 from int_resolved_part_numbers as m where m.supplier = o.supplier and m.raw = o.other_raw and m.typed_key = o.other_key
        )
    union all
    select '', trim(part_raw), part_key, null, source_file, source_line, 'van count'
    from staged_van_counts
)
select
    t.supplier,
    min(t.number) as number,
    t.typed_key,
    count(*) as times,
    string_agg(distinct t.place, ', ' order by t.place) as seen_on,
    min(t.description) as description,
    min(t.source_file || ':' || t.source_line) as example
from typed as t
where not exists (select 1 from int_resolved_part_numbers as r where r.supplier = t.supplier and r.typed_key = t.typed_key)
group by t.supplier, t.typed_key
order by times desc, t.typed_key, t.supplier
