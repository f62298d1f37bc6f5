-- One row per window of days and group of finished repairs: those followed all the window, and those of them that came
-- back.
with windows as (
    select distinct days
    from (select unnest([14, 30, 60, 90, getvariable('callback_days')]) as days)
),
followed as (
    select
        w.days,
        f.appliance_type,
        f.model_family,
        coalesce(f.technician, 'unknown') as technician,
        f.complaint_kind,
        f.component,
        f.month,
        (f.followed_days >= w.days)::integer as followed,
        (f.followed_days >= w.days and coalesce(f.next_same_days <= w.days, false))::integer as came_back,
        (f.followed_days >= w.days and coalesce(f.next_days <= w.days, false))::integer as came_back_for_anything
    from fix_followups as f
    cross join windows as w
    where f.complaint_told
)
select
    days,
    coalesce(
        case when appliance_type is not null then 'appliance_type' end,
        case when model_family is not null then 'model_family' end,
        case when technician is not null then 'technician' end,
        case when complaint_kind is not null then 'complaint_kind' end,
        case when component is not null then 'component' end,
        case when month is not null then 'month' end,
        'all'
    ) as grouping_kind,
    coalesce(appliance_type, model_family, technician, complaint_kind, component, month::varchar, 'all') as member,
    sum(followed)::bigint as repairs,
    sum(came_back)::bigint as callbacks,
    sum(came_back_for_anything)::bigint as returns,
    sum(1 - followed)::bigint as not_followed
from followed
group by grouping sets (
    (days),
    (days, appliance_type),
    (days, model_family),
    (days, technician),
    (days, complaint_kind),
    (days, component),
    (days, month)
)
order by days, grouping_kind, member
