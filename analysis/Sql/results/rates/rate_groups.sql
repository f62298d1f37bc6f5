-- One row per basis and group of calls or units: its calls, those whose need is known, and the days its units were
-- watched.
with calls as (
    select
        basis, appliance_type, brand, model_family, age_band, complaint_kind, month,
        1 as calls, (component is not null)::integer as known_calls, 0 as unit_days
    from rate_events
),
days as (
    select
        basis, appliance_type, brand, model_family, age_band, null as complaint_kind, month,
        0 as calls, 0 as known_calls, unit_days
    from unit_days
),
by_group as (
    select
        basis, appliance_type, brand, model_family, age_band, null as given_complaint, month,
        sum(calls)::bigint as calls,
        sum(known_calls)::bigint as known_calls,
        sum(unit_days)::bigint as unit_days
    from (from calls union all from days) as both_sides
    group by grouping sets (
        (basis, appliance_type),
        (basis, appliance_type, brand),
        (basis, appliance_type, model_family),
        (basis, appliance_type, age_band),
        (basis, appliance_type, model_family, age_band),
        (basis, appliance_type, month),
        (basis, appliance_type, model_family, month)
    )
),
by_complaint as (
    select
        basis, appliance_type, null as brand, model_family, null as age_band, complaint_kind as given_complaint, null as month,
        sum(calls)::bigint as calls,
        sum(known_calls)::bigint as known_calls,
        0::bigint as unit_days
    from calls
    where basis = 'share_of_calls'
    group by grouping sets (
        (basis, appliance_type, complaint_kind),
        (basis, appliance_type, model_family, complaint_kind)
    )
)
select
    basis,
    concat_ws('_',
        case when model_family is not null then 'family' end,
        case when brand is not null then 'brand' end,
        case when age_band is not null then 'age' end,
        case when given_complaint is not null then 'complaint' end,
        case when month is not null then 'month' end,
        case when coalesce(model_family, brand, age_band, given_complaint) is null and month is null then 'type' end
    ) as grouping_kind,
    month,
    appliance_type,
    brand,
    model_family,
    age_band,
    given_complaint,
    calls,
    known_calls,
    unit_days
from (from by_group union all from by_complaint) as groups
order by basis, grouping_kind, month, appliance_type, brand, model_family, age_band, given_complaint
