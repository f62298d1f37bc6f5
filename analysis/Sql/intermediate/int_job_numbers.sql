-- One row per job row that its number alone does not tell: the number as typed and the one it goes by. What the key adds
-- stands before it (2023/17); what still contradicts is kept as jobs of their own (17, 17~2).
with concerned as (
    select distinct source_order
    from int_doubtful_job_rows
    semi join (from int_job_number_tests where way = 'number' and contradicts) using (job_number)
),
keyed as (
    select
        j.job_id as job_number,
        j.source_order,
        j.source_line,
        j.opened_on,
        j.closed_on,
        k.way,
        case k.way
            when 'year' then year(j.opened_on)::varchar
            when 'technician' then coalesce(j.technician, '')
            when 'technician and year' then concat_ws('/', j.technician, year(j.opened_on))
            when 'file' then regexp_replace(j.source_file, '[.][^./]*$', '')
            else ''
        end as apart,
        concat_ws('|', j.opened_on, coalesce(j.serial_key, nullif(concat_ws('|', j.place_key, j.model_key, j.appliance_type), ''))) as unit_day,
        coalesce(j.serial_key, j.place_key, j.model_key, j.appliance_type) is null as is_bare
    from staged_jobs as j
    semi join concerned using (source_order)
    cross join int_job_key as k
),
tested as (
    select k.*, coalesce(t.contradicts, false) as contradicts
    from keyed as k
    left join int_job_number_tests as t using (way, apart, job_number)
    where k.way <> 'number' or t.contradicts
),
-- a row that only repeats number and day belongs to the unit that stands there with it
told as (
    select
        * replace (
            case when is_bare and contradicts
                then coalesce(
                    first(case when not is_bare then unit_day end ignore nulls) over (
                        partition by apart, job_number, opened_on
                        order by source_order, source_line
                        rows between unbounded preceding and unbounded following
                    ),
                    unit_day
                )
                else unit_day end as unit_day
        )
    from tested
),
placed as (
    select *, min(source_order::bigint << 32 | source_line) over (partition by apart, job_number, unit_day) as first_place
    from told
),
counted as (
    select *, dense_rank() over (partition by apart, job_number order by first_place) as nth from placed
)
select
    source_order,
    source_line,
    job_number,
    opened_on,
    closed_on,
    contradicts,
    case when apart = '' then '' else apart || '/' end || job_number || case when contradicts and nth > 1 then '~' || nth else '' end as job_id
from counted
