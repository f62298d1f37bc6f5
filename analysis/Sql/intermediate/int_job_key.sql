-- One row per load whose job numbers do not tell its jobs by themselves: what is added to them, with the counts that
-- prove it; no row where every number tells its job. 'number': nothing explains the contradictions.
with contradicted as (
    select job_number from int_job_number_tests where way = 'number' and contradicts
),
concerned as (
    select distinct source_order, source_file from int_doubtful_job_rows semi join contradicted using (job_number)
),
size as (
    select
        (select count(*) from contradicted) as numbers,
        (select sum(rows_read) from source_files semi join concerned using (source_order)) as rows_read,
        (
            select string_agg(source_file, ', ' order by place)
            from (select source_file, min(source_order) as place from concerned group by source_file)
        ) as files
),
-- what is told twice, in two exports, must stay one job
told_again as (
    select
        unnest(['year', 'technician', 'technician and year', 'file']) as way,
        unnest([
            0,
            (count(distinct coalesce(technician, '')) > 1)::integer,
            (count(distinct coalesce(technician, '')) > 1)::integer,
            1
        ]) as splits
    from int_doubtful_job_rows
    group by job_number, opened_on, coalesce(serial_key, concat_ws('|', place_key, model_key, appliance_type))
    having count(distinct source_order) > 1
),
costs as (
    select
        t.way,
        count(*) filter (t.contradicts) + coalesce(any_value(a.splits), 0) as cost,
        list_position(['year', 'technician', 'technician and year', 'file'], t.way) as place
    from int_job_number_tests as t
    left join (select way, sum(splits) as splits from told_again group by way) as a using (way)
    where t.way <> 'number'
    group by t.way
),
-- a way explains the contradictions when it removes nine in ten of them, and a number or two is a typo;
-- what somebody said goes before
best as (
    select c.way
    from costs as c
    cross join size as s
    where s.numbers >= 3 and s.numbers * 50 >= s.rows_read and c.cost * 10 <= s.numbers
    order by c.cost, c.place
    limit 1
)
select
    coalesce(getvariable('job_key')::varchar, (select way from best), 'number') as way,
    numbers,
    (
        select count(*)
        from int_job_number_tests as t
        where t.way = coalesce(getvariable('job_key')::varchar, (select way from best), 'number') and t.contradicts
    ) as unexplained,
    files
from size
where numbers > 0
