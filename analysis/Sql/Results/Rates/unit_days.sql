-- One row per basis, kind of unit, age band and month: days units were watched at that age.
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

banded as (
    select
        w.basis,
        w.appliance_type,
        w.brand,
        w.model_family,
        b.age_band,
        greatest(w.starts_on, w.born_on + b.from_days) as starts_on,
        least(w.ends_before, w.born_on + b.to_days) as ends_before
    from unit_windows as w
    cross join age_bands as b
    where w.born_on is not null
    union all
    select basis, appliance_type, brand, model_family, 'unknown', starts_on, ends_before
    from unit_windows
    where born_on is null
)

select
    s.basis,
    s.appliance_type,
    s.brand,
    s.model_family,
    s.age_band,
    m.month,
    sum(least(s.ends_before, m.month_ends_before) - greatest(s.starts_on, m.month_starts))::bigint as unit_days
from banded as s
inner join months as m
    on s.starts_on < m.month_ends_before and s.ends_before > m.month_starts
where s.starts_on < s.ends_before
group by s.basis, s.appliance_type, s.brand, s.model_family, s.age_band, m.month
order by s.basis, s.appliance_type, s.brand, s.model_family, s.age_band, m.month
