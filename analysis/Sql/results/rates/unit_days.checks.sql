-- One row per basis whose days by band and month do not add up to the days of its windows.
with split as (
    select basis, sum(unit_days) as days
    from unit_days
    group by basis
),
whole as (
    select
        basis,
        sum(greatest(0, least(ends_before, last_day + 1) - greatest(starts_on, first_day))) as days
    from unit_windows
    cross join observation
    group by basis
)
select basis, whole.days as days_watched, split.days as days_split
from whole
left join split using (basis)
where whole.days <> coalesce(split.days, 0)
