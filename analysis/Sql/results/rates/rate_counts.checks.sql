-- One row per group whose components, or complaint kinds, do not add up to the calls it should hold.
with sums as (
    select
        basis, grouping_kind, month, appliance_type, brand, model_family, age_band, given_complaint, group_value,
        sum(events) filter (where subject_kind = 'component') as needs,
        sum(events) filter (where subject_kind = 'complaint_kind') as complaints
    from rate_counts
    group by all
)
select g.basis, g.grouping_kind, g.month, g.appliance_type, g.model_family, g.known_calls, s.needs, g.calls, s.complaints
from rate_groups as g
left join sums as s
    on g.basis = s.basis and g.grouping_kind = s.grouping_kind
    and g.month is not distinct from s.month
    and g.appliance_type = s.appliance_type
    and g.brand is not distinct from s.brand
    and g.model_family is not distinct from s.model_family
    and g.age_band is not distinct from s.age_band
    and g.given_complaint is not distinct from s.given_complaint
    and g.group_value is not distinct from s.group_value
where g.known_calls <> coalesce(s.needs, 0)
    or (g.given_complaint is null and g.calls <> coalesce(s.complaints, 0))
