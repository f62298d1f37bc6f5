-- One row per job of one span of days: one customer call, one or more visits; the current version of it.
-- materialize: by day span
with parts_are_recorded as (
    select count(*) > 0 as yes from job_parts
),
judged as (
    select
        j.*,
        -- what says that the job is finished, or that it is not
        case
            when j.closed_on is not null then 'closing day'
            when j.status in ('closed', 'canceled') then 'status'
            when j.status in ('open', 'waiting_for_part') or j.outcome = 'part_ordered' then 'open'
            when c.tells_day then 'open'
            when j.outcome <> 'unknown' then 'outcome'
            when c.tells_closing then 'open'
            when l.place is not null or j.fault_text is not null or c.tells_work then 'row'
            else 'unknown'
        end as closing_basis,
        case
            when j.outcome <> 'unknown' then j.outcome
            when j.status = 'canceled' then 'declined'
            when j.status = 'waiting_for_part' then 'part_ordered'
            else j.outcome
        end as told_outcome,
        l.lines,
        l.component,
        coalesce(j.fault_component, f.component) as named_fault
    from (
        select r.* replace (coalesce(a.outcome, r.outcome) as outcome)
        from int_job_rows as r
        left join int_answered_outcomes as a on a.outcome_word = lower(trim(r.outcome_text))
    ) as j
    left join int_closing_sources as c using (source_order)
    left join (from int_job_components where opened_on between getvariable('first_day') and getvariable('last_day')) as l using (place)
    left join int_worded_components as f on f.description = lower(trim(j.fault_text))
    where j.opened_on between getvariable('first_day') and getvariable('last_day')
),
told as (
    select
        j.* replace (
            coalesce(w.complaint_kind, o.complaint_kind, j.complaint_kind) as complaint_kind,
            a.appliance_type as appliance_type,
            a.brand as brand,
            case when j.closing_basis in ('status', 'outcome', 'row') then j.opened_on else j.closed_on end as closed_on
        ),
        a.* exclude (place, job_id, opened_on, appliance_type, brand),
        -- a finished job with a part on it was fixed with it; a bare 'fixed' does not say whether a part was used: the part
        -- lines do, if the shop records parts at all
        case
            when j.told_outcome = 'unknown' and j.closing_basis not in ('open', 'unknown') and j.lines > 0 then 'fixed_with_part'
            when j.told_outcome <> 'fixed' then j.told_outcome
            when j.lines > 0 then 'fixed_with_part'
            when r.yes then 'fixed_without_part'
            else 'fixed'
        end as ended,
        -- on a type that the component is not usual for, it counts apart as a fitted one does
        coalesce(m.component, x.appliance_type || '_' || x.component, j.named_fault) as fault
    from judged as j
    join int_job_ages as a using (place)
    left join (from int_answered_complaints where opened_on between getvariable('first_day') and getvariable('last_day')) as w using (place)
    left join int_foreign_components as x on x.appliance_type = a.appliance_type and x.component = j.named_fault
    left join int_answered_components as m on m.description = replace(x.appliance_type || '_' || x.component, '_', ' ')
    left join int_own_complaints as o on j.complaint_kind = 'other' and o.words = lower(trim(j.complaint_text))
    cross join parts_are_recorded as r
)
select
    job_id,
    opened_on,
    closed_on,
    closing_basis,
    technician,
    case v.van_basis
        when 'named' then coalesce(van, crew_van)
        when 'dealt' then dealt_van
        when 'technician' then technician
        else 'shop'
    end as van,
    case
        when v.van_basis = 'one' or coalesce(van, crew_van, dealt_van) is not null then v.van_basis
        when v.van_basis = 'technician' and technician is not null then v.van_basis
    end as van_basis,
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
    -- what was found at fault had failed, whatever the visit was for
    case when fault_text is not null and visit_reason is not null then 'failure' else visit_reason end as visit_reason,
    complaint_text,
    complaint_kind,
    error_code,
    ended as outcome,
    case
        when ended in ('fixed_without_part', 'no_fault_found') then 'none'
        when ended = 'fixed_with_part' then coalesce(fault, component, 'other_part')
        when ended = 'part_ordered' then coalesce(fault, component)
        when ended = 'fixed' or (ended = 'unknown' and closing_basis not in ('open', 'unknown')) then fault
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
from (
    select
        *,
        -- jobs of a day are dealt from another van each day
        row_number() over (partition by opened_on order by job_id) + date_diff('day', date '1900-01-01', opened_on) as turn
    from told
) as t
cross join int_van_basis as v
left join (select technician as driver, van as crew_van from int_crew_vans) on driver = lower(trim(technician))
left join (select place as van_place, van as dealt_van from int_listed_vans) on van_basis = 'dealt' and van_place = turn % vans + 1
order by opened_on, job_id
