-- One row per unit of a known family and build quarter that is still out there as far as the shop knows: on the register
-- and not removed, or seen on a job and not written off.
with log as (
    from int_log_window
),
written_off as (
    select distinct unit_id
    from jobs
    where outcome = 'not_worth_repairing' and unit_id is not null and opened_on <= (select last_day from log)
)
select
    u.unit_id,
    u.appliance_type,
    u.model_family,
    (year(b.built_on) * 12 + month(b.built_on) - 1)::integer as made_month,
    u.registered
from units as u
cross join log
cross join lateral (select u.made_from + ((u.made_to - u.made_from) // 2)::integer as built_on) as b
anti join written_off as w using (unit_id)
where u.appliance_type is not null
    and u.model_family is not null
    and u.made_to - u.made_from <= 92
    and (u.removed_on is null or u.removed_on > log.last_day)
    and (u.registered or u.seen_first <= log.last_day)
order by u.unit_id
