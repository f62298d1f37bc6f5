-- One row per part line of an unknown job that a mended file stands for.
with in_place as (
    select l.source_order, l.source_line, l.message
    from int_orphan_part_lines as l
    semi join mended_part_lines as m
        on m.source_order = l.source_order
        and m.source_line = l.source_line
        and m.message in (l.message, '')
),
-- a newer export moves lines: of those that lack the same job, as many count as were mended
left_over as (
    select m.source_order, m.message, count(*) as mended
    from mended_part_lines as m
    anti join in_place as i
        on i.source_order = m.source_order
        and i.source_line = m.source_line
        and m.message in (i.message, '')
    where m.message <> ''
    group by m.source_order, m.message
),
moved as (
    select l.source_order, l.source_line
    from int_orphan_part_lines as l
    join left_over as o using (source_order, message)
    anti join in_place as i using (source_order, source_line)
    qualify row_number() over (partition by l.source_order, l.message order by l.source_line) <= o.mended
)
select source_order, source_line from in_place
union all
select source_order, source_line from moved
