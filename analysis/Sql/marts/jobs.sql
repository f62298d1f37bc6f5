-- One row per job of one span of days: one customer call, one or more visits; the current version of it.
-- materialize: by day span
with parts_are_recorded as (
    select count(*) > 0 as yes from job_parts
),
told as (
    select
        j.* replace (coalesce(w.complaint_kind, j.complaint_kind) as complaint_kind, a.appliance_type as appliance_type, a.brand as brand),
        a.* exclude (place, job_id, opened_on, appliance_type, brand),
        l.component,
        -- a bare 'fixed' does not say whether a part was used: the part lines do, if the shop records parts at all
        case
            when j.outcome <> 'fixed' then j.outcome
            when l.lines > 0 then 'fixed_with_part'
            when r.yes then 'fixed_without_part'
            else 'fixed'
        end as ended,
        l.lines
    from int_job_rows as j
    join int_job_ages as a using (place)
    left join (from int_job_components where opened_on between getvariable('first_day') and getvariable('last_day')) as l using (place)
    left join (from int_answered_complaints where opened_on between getvariable('first_day') and getvariable('last_day')) as w using (place)
    cross join parts_are_recorded as r
    where j.opened_on between getvariable('first_day') and getvariable('last_day')
)
select
    job_id,
    opened_on,
    closed_on,
    technician,
    van,
    unit_id,
    place_key as customer_id,
    customer_kind,
    appliance_type,
    brand,
    model_raw,
    model_number,
    model_family,
    model_basis,
    made_from,
    made_to,
    age_years,
    age_least_years,
    age_most_years,
    age_chance,
    age_basis,
    complaint_text,
    complaint_kind,
    error_code,
    ended as outcome,
    case
        when ended in ('fixed_without_part', 'no_fault_found') then 'none'
        when ended = 'fixed_with_part' then coalesce(component, 'other_part')
        when ended = 'part_ordered' then component
        when ended = 'unknown' and closed_on is not null and lines > 0 then coalesce(component, 'other_part')
    end as main_component,
    visits,
    labour_minutes,
    warranty,
    case
        when ended = 'part_ordered' then false
        when closed_on is null or visits is null then null
        when ended in ('fixed_with_part', 'fixed_without_part', 'fixed', 'no_fault_found') then visits <= 1
    end as first_visit_done,
    source_file,
    source_line
from told
order by opened_on, job_id
