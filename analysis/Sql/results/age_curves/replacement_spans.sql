-- One row per part fitted on a known appliance: days until the same component was called for again, until the appliance
-- was written off, until the part gave way to another design, or until the log ends.
with log as (
    from int_log_window
),
failed_again as (
    select job_id, component, fitted_on + again_days as again_on
    from int_part_followups
    where again_days is not null
),
superseded as (
    select f.job_id, f.component, min(s.effective_on) as superseded_on
    from int_fitted_components as f
    join supersessions as s
        on f.fitted_number = s.old_number and s.effective_on > f.fitted_on
    where s.new_number is not null
    group by all
),
ends as (
    select
        f.*,
        a.again_on,
        s.superseded_on,
        case when u.written_off_on > f.fitted_on then u.written_off_on end as written_off_on,
        case when u.basis = 'register' then r.removed_on end as removed_on
    from int_fitted_components as f
    left join failed_again as a using (job_id, component)
    left join superseded as s using (job_id, component)
    left join unit_ages as u on f.unit_id = u.unit_id
    left join units as r on f.unit_id = r.unit_id
)
select
    e.appliance_type,
    e.component,
    e.supplier,
    e.job_id,
    case
        when e.again_on <= least(l.last_day, e.written_off_on, e.superseded_on) then e.again_on - e.fitted_on
        else least(l.last_day, e.written_off_on, e.removed_on, e.superseded_on) - e.fitted_on
    end::integer as days,
    case
        when e.again_on <= least(l.last_day, e.written_off_on, e.superseded_on) then 'failed_again'
        when e.superseded_on <= least(l.last_day, e.written_off_on, e.removed_on) then 'design_changed'
        when least(e.written_off_on, e.removed_on) <= l.last_day then 'written_off'
        else 'still_working'
    end as ending
from ends as e
cross join log as l
order by e.appliance_type, e.component, e.supplier, e.job_id
