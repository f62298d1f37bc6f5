-- One row per appliance the shop knows: the day its age counts from (int_unit_births), and the ages in days between which
-- it was watched.
with log as (
    from int_log_window
),
calls as (
    select
        unit_id,
        min(opened_on) as first_call,
        max(opened_on) filter (outcome = 'not_worth_repairing') as written_off_on
    from jobs
    where unit_id is not null and opened_on <= (select last_day from log)
    group by unit_id
),
births as (
    select
        u.unit_id,
        coalesce(u.appliance_type, 'unknown') as appliance_type,
        coalesce(u.model_family, 'unknown') as model_family,
        u.registered,
        case when u.registered then 'register' else 'units_seen' end as basis,
        b.born_on,
        b.born_basis,
        b.spread_too_wide,
        b.used_from,
        u.removed_on
    from units as u
    join int_unit_births as b using (unit_id)
),
watched as (
    select
        b.*,
        -- The call that made an unlisted unit known is not counted as a failure: the unit is watched from that call on.
        case when b.registered then greatest(b.used_from, l.first_day - 1, b.born_on) else c.first_call end - b.born_on as entry_days,
        least(l.last_day, b.removed_on, case when not b.registered then c.written_off_on end) - b.born_on as exit_days,
        greatest(0, l.first_day - 1 - b.born_on) as log_entry_days,
        l.last_day - b.born_on as log_exit_days,
        c.written_off_on
    from births as b
    cross join log as l
    left join calls as c using (unit_id)
    where b.registered or c.first_call is not null
)
select
    unit_id,
    appliance_type,
    model_family,
    basis,
    born_basis,
    born_on,
    entry_days::integer as entry_days,
    exit_days::integer as exit_days,
    log_entry_days::integer as log_entry_days,
    log_exit_days::integer as log_exit_days,
    written_off_on,
    case
        when born_on is null and spread_too_wide then 'built within more than a year, too wide to tell an age'
        when born_on is null then 'age not known'
        when entry_days < 0 then 'called before it was built'
        when entry_days >= exit_days then 'never watched: gone, or built, outside the time of the log'
    end as left_out
from watched
order by unit_id
