-- One row per thing that jobs can lack: how many lack it, of how many it was to be expected of.
with counts as (
    select
        count(*) as jobs,
        count(*) filter (where closed_on is not null) as closed,
        count(*) filter (where unit_id is null) as unit_unknown,
        count(*) filter (where model_family is null) as family_unknown,
        count(*) filter (where age_years is null) as age_unknown,
        count(*) filter (where complaint_kind = 'none') as complaint_missing,
        count(*) filter (where complaint_kind = 'other') as complaint_other,
        count(*) filter (
            where closed_on is not null and main_component is null and outcome not in ('declined', 'not_worth_repairing')
        ) as cause_unknown,
        count(*) filter (where closed_on is not null and first_visit_done is null) as visits_unknown,
        count(*) filter (where van is null) as van_unknown
    from jobs
),
part_lines as (
    select count(*) as lines, count(*) filter (where part_number is null) as unresolved
    from job_parts
),
gaps as (
    select unnest([
        {'gap': 'unit', 'missing': unit_unknown, 'expected': jobs},
        {'gap': 'family', 'missing': family_unknown, 'expected': jobs},
        {'gap': 'age', 'missing': age_unknown, 'expected': jobs},
        {'gap': 'complaint_missing', 'missing': complaint_missing, 'expected': jobs},
        {'gap': 'complaint_other', 'missing': complaint_other, 'expected': jobs},
        {'gap': 'cause', 'missing': cause_unknown, 'expected': closed},
        {'gap': 'visits', 'missing': visits_unknown, 'expected': closed},
        {'gap': 'van', 'missing': van_unknown, 'expected': jobs},
        {'gap': 'part', 'missing': unresolved, 'expected': lines}
    ]) as g
    from counts cross join part_lines
)
select g.gap, g.missing, g.expected
from gaps
where g.missing > 0 and g.expected > 0
order by g.missing / g.expected desc, g.gap
