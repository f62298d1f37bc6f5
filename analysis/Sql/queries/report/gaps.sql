-- One row per thing that jobs lack: how many lack it, of how many, and how many would count again with it alone, by answer.
-- Failure calls that are not still open. What brings back most answers comes first: a job that lacks two things for an
-- answer is brought back by neither alone. is_half_told: the log tells most of these jobs what the thing can be found from.
with part_lines as (
    select
        t.job_id,
        bool_or(t.told_by = 'nothing') as some_unknown,
        bool_or(t.told_by = 'nothing' and l.part_raw is not null) as some_typed,
        bool_or(t.told_by <> 'nothing' and p.part_number is null and c.component is null) as some_unpriced
    from told_part_lines() as t
    left join job_parts as l on l.job_id = t.job_id and l.line = t.line
    left join (select part_number from parts where price is not null) as p on p.part_number = t.part_number
    left join (select component from parts group by component having count(distinct price) = 1) as c
        on t.told_by = 'words' and c.component = t.component
    group by t.job_id
),
finished as (
    select
        j.*,
        p.job_id is not null as has_lines,
        coalesce(p.some_unknown, false) as some_part_unknown,
        coalesce(p.some_typed, false) as has_typed_number,
        coalesce(p.some_unpriced, false) as some_part_unpriced,
        j.closed_on is null and j.closing_basis = 'open' as lacks_closing,
        case
            when j.outcome in ('fixed_with_part', 'fixed_without_part', 'fixed') then 'repaired'
            when j.outcome in ('declined', 'not_worth_repairing') then 'not repaired'
            when j.outcome = 'no_fault_found' then 'no fault'
            else 'not told'
        end as ending
    from jobs as j
    left join part_lines as p using (job_id)
    -- a job that tells how it ended is finished, whatever the log's other jobs tell
    where coalesce(j.visit_reason, 'failure') = 'failure'
        and (not coalesce(j.closing_basis = 'open', j.closed_on is null) or j.outcome not in ('unknown', 'part_ordered'))
),
calls as (
    select
        ending,
        list_filter([
            case when ending = 'not told' and main_component is null then 'outcome' end,
            case when lacks_closing then 'closing' end,
            case when ending = 'repaired' and not has_lines and coalesce(main_component, 'other_part') = 'other_part' then 'component' end,
            case when has_lines and main_component = 'other_part' then 'part' when some_part_unknown then 'part_number' end,
            case when some_part_unpriced then 'price' end,
            case when appliance_type is null then 'type' end,
            case when model_family is null then 'family' end,
            case when complaint_kind = 'none' then 'complaint' when complaint_kind = 'other' then 'complaint_kind' end,
            case when unit_id is null then 'unit' end,
            case when age_years is null then 'age' end,
            case when van is null then 'van' end,
            case when ending in ('repaired', 'no fault') and first_visit_done is null and not lacks_closing then 'visits' end
        ], gap -> gap is not null) as lacks,
        closing_basis = 'closing day' as has_closing_day,
        model_number is not null as has_model,
        customer_id is not null as has_customer,
        unit_id is not null as has_unit,
        technician is not null as has_technician,
        has_typed_number
    from finished
),
-- jobs alike in all of it are counted together
patterns as (
    select row_number() over () as pattern, *
    from (select *, count(*) as jobs from calls group by all)
),
lacking as (
    select pattern, jobs, unnest(lacks) as gap, has_closing_day, has_model, has_customer, has_unit, has_technician, has_typed_number
    from patterns
),
found as (
    select
        gap,
        sum(jobs)::bigint as missing,
        2 * sum(jobs) filter (
            case gap
                when 'outcome' then has_closing_day
                when 'type' then has_model
                when 'family' then has_model
                when 'unit' then has_customer
                when 'age' then has_unit
                when 'van' then has_technician
                when 'part_number' then has_typed_number
            end
        ) > sum(jobs) as is_half_told
    from lacking
    group by gap
),
answers as (
    select unnest([
        {'answer': 'rates', 'endings': ['repaired', 'no fault', 'not told'], 'needs': ['outcome', 'component', 'part', 'type']},
        {'answer': 'families', 'endings': ['repaired', 'no fault', 'not told'], 'needs': ['outcome', 'component', 'part', 'family']},
        {
            'answer': 'odds',
            'endings': ['repaired', 'no fault', 'not told'],
            'needs': ['outcome', 'closing', 'component', 'part', 'type', 'complaint', 'complaint_kind']
        },
        {'answer': 'ages', 'endings': ['repaired', 'no fault', 'not told'], 'needs': ['outcome', 'component', 'part', 'age']},
        {'answer': 'curves', 'endings': ['repaired', 'not told'], 'needs': ['outcome', 'closing', 'component', 'part', 'unit', 'age']},
        {
            'answer': 'plan',
            'endings': ['repaired', 'no fault', 'not repaired', 'not told'],
            'needs': ['outcome', 'closing', 'component', 'part', 'part_number', 'price', 'van']
        },
        {'answer': 'callbacks', 'endings': ['repaired', 'not told'], 'needs': ['outcome', 'closing', 'unit', 'complaint', 'complaint_kind']},
        {'answer': 'first_visits', 'endings': ['repaired', 'no fault', 'not told'], 'needs': ['outcome', 'closing', 'visits']}
    ], recursive := true)
),
brought_back as (
    select p.pattern, p.jobs, a.answer, list_intersect(p.lacks, a.needs)[1] as gap
    from patterns as p
    join answers as a on list_contains(a.endings, p.ending) and len(list_intersect(p.lacks, a.needs)) = 1
),
gains as (
    select
        gap,
        sum(jobs)::bigint as answers,
        coalesce(sum(jobs) filter (answer = 'rates'), 0)::bigint as rates,
        coalesce(sum(jobs) filter (answer = 'families'), 0)::bigint as families,
        coalesce(sum(jobs) filter (answer = 'odds'), 0)::bigint as odds,
        coalesce(sum(jobs) filter (answer = 'ages'), 0)::bigint as ages,
        coalesce(sum(jobs) filter (answer = 'curves'), 0)::bigint as curves,
        coalesce(sum(jobs) filter (answer = 'plan'), 0)::bigint as plan,
        coalesce(sum(jobs) filter (answer = 'callbacks'), 0)::bigint as callbacks,
        coalesce(sum(jobs) filter (answer = 'first_visits'), 0)::bigint as first_visits
    from brought_back
    group by gap
),
jobs_back as (
    select gap, sum(jobs)::bigint as jobs
    from (select distinct pattern, jobs, gap from brought_back)
    group by gap
)
select
    f.gap,
    coalesce(f.is_half_told, false) as is_half_told,
    f.missing,
    (select count(*) from calls) as expected,
    coalesce(b.jobs, 0) as brought_back,
    coalesce(g.rates, 0) as rates,
    coalesce(g.families, 0) as families,
    coalesce(g.odds, 0) as odds,
    coalesce(g.ages, 0) as ages,
    coalesce(g.curves, 0) as curves,
    coalesce(g.plan, 0) as plan,
    coalesce(g.callbacks, 0) as callbacks,
    coalesce(g.first_visits, 0) as first_visits
from found as f
left join gains as g using (gap)
left join jobs_back as b using (gap)
order by coalesce(g.answers, 0) desc, f.missing desc, f.gap
