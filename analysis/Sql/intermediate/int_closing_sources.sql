-- One row per file of jobs: whether its rows say which jobs are finished, so that a row that does not is still open.
-- Jobs of the last three months may well be open; the older ones decide. Where a file has too few of them, the shop's
-- other files do. tells_day: closing days alone say it; without them, an outcome says that a job is finished, too.
-- tells_work: no row says it in either way, but nine in ten name what was fitted or was at fault: the file lists finished jobs.
with parted as (
    select distinct source_order, source_line from staged_job_parts where with_job_row
),
told as (
    select
        j.source_order,
        j.closed_on is not null or j.status is not null as is_told,
        j.outcome <> 'unknown' as is_ended,
        p.source_line is not null or j.fault_text is not null as is_worked,
        j.closed_on is not null as has_day,
        coalesce(j.opened_on < a.as_of - 90, false) as is_old
    from staged_jobs as j
    cross join int_as_of as a
    left join parted as p using (source_order, source_line)
),
files as (
    select
        source_order,
        count(*) filter (is_told) as told,
        count(*) filter (has_day) as days,
        count(*) filter (is_told or is_ended) as ends,
        count(*) filter (is_worked) * 10 >= count(*) * 9 as is_worked,
        count(*) filter (is_old) as old_rows,
        count(*) filter (is_old and is_told) as old_told,
        count(*) filter (is_old and has_day) as old_days
    from told
    group by source_order
)
select
    source_order,
    case
        when old_rows >= 10 then old_told * 2 >= old_rows
        when sum(old_rows) over () > 0 then sum(old_told) over () * 2 >= sum(old_rows) over ()
        else told > 0
    end as tells_closing,
    case
        when old_rows >= 10 then old_days * 2 >= old_rows
        when sum(old_rows) over () > 0 then sum(old_days) over () * 2 >= sum(old_rows) over ()
        else days > 0
    end as tells_day,
    ends = 0 and is_worked as tells_work
from files
