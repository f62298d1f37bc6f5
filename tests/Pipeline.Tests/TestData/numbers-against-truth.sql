-- One row per way of writing a number: part lines whose true part is known, those resolved, those resolved to a wrong part, and what stayed open.
with lines as (
    select *, count(*) over (partition by job_id) as lines_of_job, regexp_replace(upper(part_raw), '[^A-Z0-9]', '', 'g') as raw_key from job_parts
),
judged as (
    select p.part_raw, p.raw_key, p.part_number, coalesce(c.current_number, l.part_number) as true_number
    from lines as p
    join truth as t using (job_id)
    join lives as l on l.family = t.family and l.component = t.recorded_component
    left join parts as c on c.part_number = l.part_number
    -- a job with one line is about its recorded component whatever its number was taken for
    where l.part_number <> '' and (p.component = t.recorded_component or p.component is null or p.lines_of_job = 1)
),
listed_alike as (
    select translate(regexp_replace(upper(number), '[^A-Z0-9]', '', 'g'), 'OIL', '011') as alike
    from (select old_number as number from listed_arrows union select part_number from lives)
),
written as (
    select
        *,
        case
            when part_raw = true_number then 'current'
            when raw_key in (select regexp_replace(upper(alias), '[^A-Z0-9]', '', 'g') from listed_aliases) then 'supplier''s'
            when raw_key in (select regexp_replace(upper(old_number), '[^A-Z0-9]', '', 'g') from listed_arrows) then 'old'
            when raw_key = regexp_replace(upper(true_number), '[^A-Z0-9]', '', 'g') then 'current, other signs'
            -- letters taken for digits; the lists' own numbers, not the program's answer, say what could be meant
            when translate(raw_key, 'OIL', '011') in (from listed_alike) then 'misspelt'
            else 'in no list'
        end as writing
    from judged
)
select
    writing,
    count(*) as lines,
    count(part_number) as resolved,
    count(*) filter (part_number <> true_number) as wrong,
    coalesce(string_agg(part_raw || ' for ' || true_number, ', ' order by part_raw) filter (part_number is null), '') as open
from written
group by writing
order by writing
