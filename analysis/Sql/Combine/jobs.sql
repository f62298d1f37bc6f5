-- One row per job: one customer call, one or more visits; the current version of it.
with lines as (
    select
        p.job_id,
        count(*) as lines,
        first(p.component order by coalesce(r.role, 'main') = 'accessory', p.line) filter (p.component is not null) as component
    from job_parts as p
    left join component_roles as r using (component)
    group by p.job_id
),
parts_are_recorded as (
    select count(*) > 0 as yes from job_parts
),
-- 'fixed' alone: the part lines say whether with a part, where the shop writes parts down at all
ended as (
    select
        j.job_id,
        case
            when j.outcome <> 'fixed' then j.outcome
            when l.lines > 0 then 'fixed_with_part'
            when r.yes then 'fixed_without_part'
            else 'fixed'
        end as outcome
    from job_rows as j
    left join lines as l using (job_id)
    cross join parts_are_recorded as r
)
select
    j.job_id,
    j.opened_on,
    j.closed_on,
    j.technician,
    j.van,
    u.unit_id,
    j.place_key as customer_id,
    j.customer_kind,
    m.appliance_type,
    m.brand,
    j.model_raw,
    m.model_number,
    m.model_family,
    m.model_basis,
    a.made_from,
    a.made_to,
    a.age_years,
    a.age_least_years,
    a.age_most_years,
    a.age_chance,
    a.age_basis,
    j.complaint_text,
    j.complaint_kind,
    j.error_code,
    e.outcome,
    case
        when e.outcome in ('fixed_without_part', 'no_fault_found') then 'none'
        when e.outcome = 'fixed_with_part' then coalesce(l.component, 'other_part')
        when e.outcome = 'part_ordered' then l.component
        when e.outcome = 'unknown' and j.closed_on is not null and l.lines > 0 then coalesce(l.component, 'other_part')
    end as main_component,
    j.visits,
    j.labour_minutes,
    case
        when e.outcome = 'part_ordered' then false
        when j.closed_on is null or j.visits is null then null
        when e.outcome in ('fixed_with_part', 'fixed_without_part', 'fixed', 'no_fault_found') then j.visits <= 1
    end as first_visit_done,
    j.source_file,
    j.source_line
from job_rows as j
join job_models as m using (job_id)
join job_units as u using (job_id)
join job_ages as a using (job_id)
join ended as e using (job_id)
left join lines as l using (job_id)
order by j.opened_on, j.job_id
