-- One row per cut of the calls, group and subject: its calls, those whose need is known, their chances to belong, and the days
-- its units were watched.
-- Every cut of the failure rates is stated here, once: by the appliance among the grouping sets, by a property of the call
-- among the properties.
with properties as (
    select job_id, 'customer_kind' as grouping_kind, coalesce(customer_kind, 'unknown') as group_value from jobs
    union all
    select job_id, 'warranty', case when warranty then 'yes' when not warranty then 'no' else 'unknown' end from jobs
),
subjects as (
    select 'all' as subject_kind, 'all' as subject, 1 as calls, (component is not null)::integer as known_calls, * from rate_events
    union all
    select 'component', component, 1, 1, * from rate_events where component is not null
    union all
    select 'complaint_kind', complaint_kind, 1, 0, * from rate_events
),
with_days as (
    select *, 0 as unit_days from subjects
    union all by name
    select 'all' as subject_kind, 'all' as subject, 0 as calls, 0 as known_calls, * from unit_days
),
by_appliance as (
    select
        basis, month, appliance_type, brand, model_family, age_band, complaint_kind as given_complaint, subject_kind, subject,
        sum(calls)::bigint as calls,
        sum(known_calls)::bigint as known_calls,
        sum(case when calls > 0 then chance end) as chance,
        sum(unit_days)::bigint as unit_days
    from with_days
    group by grouping sets (
        (basis, subject_kind, subject, appliance_type),
        (basis, subject_kind, subject, appliance_type, brand),
        (basis, subject_kind, subject, appliance_type, model_family),
        (basis, subject_kind, subject, appliance_type, age_band),
        (basis, subject_kind, subject, appliance_type, model_family, age_band),
        (basis, subject_kind, subject, appliance_type, month),
        (basis, subject_kind, subject, appliance_type, model_family, month),
        (basis, subject_kind, subject, appliance_type, complaint_kind),
        (basis, subject_kind, subject, appliance_type, model_family, complaint_kind)
    )
    -- a unit's days count for every complaint
    having grouping(complaint_kind) = 1 or (basis = 'share_of_calls' and subject_kind <> 'complaint_kind')
),
-- days are watched whatever the next call is like, so that a property of the call cuts shares of calls only
by_property as (
    select
        s.basis, s.appliance_type, s.subject_kind, s.subject, p.grouping_kind, p.group_value,
        sum(s.calls)::bigint as calls,
        sum(s.known_calls)::bigint as known_calls,
        0::bigint as unit_days
    from subjects as s
    join properties as p using (job_id)
    where s.basis = 'share_of_calls'
    group by all
),
named as (
    select
        *,
        concat_ws('_',
            case when model_family is not null then 'family' end,
            case when brand is not null then 'brand' end,
            case when age_band is not null then 'age' end,
            case when given_complaint is not null then 'complaint' end,
            case when month is not null then 'month' end,
            case when coalesce(model_family, brand, age_band, given_complaint) is null and month is null then 'type' end
        ) as grouping_kind
    from by_appliance
)
select
    basis, grouping_kind, month, appliance_type, brand, model_family, age_band, given_complaint, group_value,
    subject_kind, subject, calls, known_calls, chance, unit_days
from (from named union all by name from by_property) as cells
order by basis, grouping_kind, month, appliance_type, brand, model_family, age_band, given_complaint, group_value, subject_kind, subject
