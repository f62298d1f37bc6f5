-- One row per basis, group and subject (a component, or a complaint kind) with at least one call.
with needs as (
    select
        'component' as subject_kind, component as subject,
        basis, appliance_type, brand, model_family, age_band, complaint_kind, month
    from rate_events
    where component is not null
),
complaints as (
    select
        'complaint_kind' as subject_kind, complaint_kind as subject,
        basis, appliance_type, brand, model_family, age_band, complaint_kind, month
    from rate_events
),
by_group as (
    select
        subject_kind, subject, basis, appliance_type, brand, model_family, age_band, null as given_complaint, month,
        count(*) as events
    from (from needs union all from complaints) as both_subjects
    group by grouping sets (
        (subject_kind, subject, basis, appliance_type),
        (subject_kind, subject, basis, appliance_type, brand),
        (subject_kind, subject, basis, appliance_type, model_family),
        (subject_kind, subject, basis, appliance_type, age_band),
        (subject_kind, subject, basis, appliance_type, model_family, age_band),
        (subject_kind, subject, basis, appliance_type, month),
        (subject_kind, subject, basis, appliance_type, model_family, month)
    )
),
by_complaint as (
    select
        subject_kind, subject, basis, appliance_type, null as brand, model_family, null as age_band,
        complaint_kind as given_complaint, null as month,
        count(*) as events
    from needs
    where basis = 'share_of_calls'
    group by grouping sets (
        (subject_kind, subject, basis, appliance_type, complaint_kind),
        (subject_kind, subject, basis, appliance_type, model_family, complaint_kind)
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
    subject_kind,
    subject,
    events
from (from by_group union all from by_complaint) as counts
order by basis, grouping_kind, month, appliance_type, brand, model_family, age_band, given_complaint, subject_kind, subject
