-- One row per appliance type and subject (a component, or a complaint kind): cases on units that no register lists, cases
-- whose unit is not told, and how many of these are expected to be on a unit that no register lists.
with subjects as (
    select
        coalesce(j.appliance_type, 'unknown') as appliance_type,
        c.component,
        j.complaint_kind,
        c.unit_id is null as is_untold,
        1 - coalesce(f.chance, 0) as chance
    from cases as c
    join jobs as j using (job_id)
    cross join observation as o
    left join units as u on u.unit_id = c.unit_id
    left join untold_failures as f on f.job_id = c.job_id
    where j.opened_on between o.first_day and o.last_day and not coalesce(u.registered, false)
),
both_kinds as (
    select 'component' as subject_kind, component as subject, * from subjects where component is not null
    union all
    select 'complaint_kind', complaint_kind, * from subjects
)
select
    appliance_type,
    subject_kind,
    subject,
    count(*) filter (where not is_untold) as told,
    count(*) filter (where is_untold) as untold,
    coalesce(sum(chance) filter (where is_untold), 0)::double as expected
from both_kinds
group by appliance_type, subject_kind, subject
order by appliance_type, subject_kind, subject
