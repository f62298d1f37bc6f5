-- One row per appliance the shop knows: its birthday, and the ages in days between which it was watched. Days count
-- from installation where that is known, else from the middle of the build interval.
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
        unit_id,
        coalesce(appliance_type, 'unknown') as appliance_type,
        coalesce(model_family, 'unknown') as model_family,
        registered,
        case when registered then 'register' else 'units_seen' end as basis,
        coalesce(installed_on, made_from + ((made_to - made_from) // 2)::integer, made_from, made_to) as born_on,
        case when installed_on is not null then 'installed' else 'built' end as birthday,
        case when installed_on is not null then 0 else coalesce(made_to - made_from, 0) end as spread_days,
        removed_on
    from units
),
watched as (
    select
        b.*,
        -- The call that made an unlisted unit known is not counted as a failure: the unit is watched from that call on.
        case when b.registered then greatest(0, l.first_day - 1 - b.born_on) else c.first_call - b.born_on end as entry_days,
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
    birthday,
    born_on,
    entry_days::integer as entry_days,
    exit_days::integer as exit_days,
    log_entry_days::integer as log_entry_days,
    log_exit_days::integer as log_exit_days,
    written_off_on,
    case
        when born_on is null then 'age not known'
        when spread_days > 366 then 'built within more than a year, too wide to tell an age'
        when entry_days < 0 then 'called before it was built'
        when entry_days >= exit_days then 'never watched: gone, or built, outside the time of the log'
    end as left_out
from watched
order by unit_id
