-- Fills staged lists: $parts part numbers, an arrow for three in ten of them, and a job line for each tenth number, typed in four ways.
create or replace temp table numbers as
select
    i::integer as i,
    -- a letter, a dash, digits: three arrows in ten lead to the next number, so chains run up to about six
    chr((65 + i % 8)::integer) || 'X-' || lpad((i * 7 % 10000000)::varchar, 7, '0') as number
from range($parts) as r(i);

insert into staged_parts by name
select
    number as part_raw,
    replace(number, '-', '') as part_key,
    'Part ' || i as description,
    'component_' || i % 50 as component,
    (5 + i % 200)::decimal(12, 2) as price,
    'p' || i as row_hash,
    1 as source_order,
    'prices.csv' as source_file,
    i + 2 as source_line
from numbers;

insert into staged_supersessions by name
select
    o.number as old_raw,
    replace(o.number, '-', '') as old_key,
    n.number as new_raw,
    replace(n.number, '-', '') as new_key,
    date '2015-01-01' + (hash(o.i) % 3000)::integer as effective_on,
    'replaces' as kind,
    1 as quantity,
    'a' || o.i as row_hash,
    2 as source_order,
    'superseded.csv' as source_file,
    o.i + 2 as source_line
from numbers as o
join numbers as n on n.i = o.i + 1
where hash(o.i, 3) % 10 < 3;

insert into staged_jobs by name
select
    'J' || i as job_id,
    date '2024-01-01' + (i % 365) as opened_on,
    date '2024-01-01' + (i % 365) as closed_on,
    'other' as complaint_kind,
    'fixed_with_part' as outcome,
    'j' || i as row_hash,
    3 as source_order,
    'jobs.csv' as source_file,
    i + 2 as source_line
from numbers
where i % 10 = 0;

insert into staged_job_parts by name
select
    'J' || i as job_id,
    case i % 4 when 0 then number when 1 then lower(number) when 2 then replace(number, '-', ' ') else replace(number, '0', 'O') end as part_raw,
    case when i % 4 = 3 then replace(replace(number, '-', ''), '0', 'O') else replace(number, '-', '') end as part_key,
    1 as quantity,
    1 as group_no,
    'j' || i as row_hash,
    true as with_job_row,
    3 as source_order,
    'jobs.csv' as source_file,
    i + 2 as source_line
from numbers
where i % 10 = 0;

create or replace table source_files as
select source_order, source_file, 'made' as content_hash, kind, n::bigint as rows_read, 0::bigint as rejected, false as one_part_per_row
from (
    select 1 as source_order, 'prices.csv' as source_file, 'parts' as kind, (select count(*) from staged_parts) as n
    union all
    select 2, 'superseded.csv', 'supersessions', (select count(*) from staged_supersessions)
    union all
    select 3, 'jobs.csv', 'jobs', (select count(*) from staged_jobs)
);
