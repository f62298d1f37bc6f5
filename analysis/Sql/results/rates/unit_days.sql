-- One row per basis, kind of unit, age band and month: days units were watched at that age.
-- A span of days counts for a month what passed of the month before its end, less what passed before its start; so
-- starts
-- and ends are counted apart, by their month, and no span is held against every month.
with log as (
    from observation
),
months as (
    select
        month::date as month,
        greatest(month::date, log.first_day) as month_starts,
        least((month + interval 1 month)::date, log.last_day + 1) as month_ends_before
    from log, unnest(generate_series(date_trunc('month', log.first_day), date_trunc('month', log.last_day), interval 1 month)) as m(month)
),
banded as not materialized (
    select
        w.basis,
        w.appliance_type,
        w.brand,
        w.model_family,
        b.age_band,
        greatest(w.starts_on, w.born_on + b.from_days, log.first_day) as starts_on,
        least(w.ends_before, w.born_on + b.to_days, log.last_day + 1) as ends_before
    from unit_windows as w
    cross join age_bands as b
    cross join log
    where w.born_on is not null
    union all
    select basis, appliance_type, brand, model_family, 'unknown', greatest(starts_on, log.first_day), least(ends_before, log.last_day + 1)
    from unit_windows
    cross join log
    where born_on is null
),
turns as (
    select basis, appliance_type, brand, model_family, age_band, starts_on as day, -count(*) as spans
    from banded
    where starts_on < ends_before
    group by all
    union all
    select basis, appliance_type, brand, model_family, age_band, ends_before, count(*)
    from banded
    where starts_on < ends_before
    group by all
),
-- the day after the last stands at the end of the last month
turned as (
    select
        t.basis, t.appliance_type, t.brand, t.model_family, t.age_band, m.month,
        sum(t.spans) as spans,
        sum(t.spans * (t.day - m.month_starts)) as days
    from turns as t
    cross join log
    join months as m on m.month = date_trunc('month', least(t.day, log.last_day))
    group by all
),
watched as (
    select
        k.basis, k.appliance_type, k.brand, k.model_family, k.age_band, m.month,
        coalesce(t.days, 0) + (m.month_ends_before - m.month_starts) * coalesce(sum(t.spans) over later, 0) as unit_days
    from (select distinct basis, appliance_type, brand, model_family, age_band from turned) as k
    cross join months as m
    left join turned as t using (basis, appliance_type, brand, model_family, age_band, month)
    window later as (
        partition by k.basis, k.appliance_type, k.brand, k.model_family, k.age_band
        order by m.month desc
        rows between unbounded preceding and 1 preceding
    )
)
select basis, appliance_type, brand, model_family, age_band, month, unit_days::bigint as unit_days
from watched
where unit_days > 0
order by basis, appliance_type, brand, model_family, age_band, month
