-- One row per source row that is not loaded: exact duplicate, replaced by a newer version, or continuation of a job
-- that an earlier row represents. Rows that are not here are loaded.
with told as (
    select
        *,
        count(*) over (partition by kind, row_key) as tellings,
        bool_and(told_on is not null) over (partition by kind, row_key) as dated
    from int_natural_keys
),
-- dates decide only where every telling has one; else the order of the sources does. Within a file no row replaces another.
ranked as (
    select
        *,
        dense_rank() over (
            partition by kind, row_key
            order by case when dated then told_on end desc, source_order desc
        ) as from_newest,
        row_number() over (partition by kind, row_key, row_hash order by source_order, source_line) as copy_no
    from told
    where tellings > 1
),
judged as (
    select
        kind,
        row_key,
        filled,
        told_line,
        source_order,
        source_line,
        copy_no,
        min(from_newest) over (partition by kind, row_key, row_hash) = 1 as is_newest_version
    from ranked
),
often as (
    select
        kind,
        row_key,
        filled,
        told_line,
        source_order,
        source_line,
        case when copy_no > 1 then 'duplicate' when is_newest_version then 'loaded' else 'replaced' end as status
    from judged
)
select
    kind,
    source_order,
    source_line,
    case when status = 'loaded' then 'continued' else status end as status
from often
-- where a file tells a job in two ways, the fullest and then the last speaks for it
qualify status <> 'loaded'
    or (
        kind = 'jobs'
        and row_number() over (partition by kind, row_key, status order by filled desc, told_line desc, source_order, source_line) > 1
    )
