-- One row per basis, group and subject (a component, or a complaint kind) with at least one call.
select
    basis, grouping_kind, month, appliance_type, brand, model_family, age_band, given_complaint, group_value, subject_kind, subject,
    calls as events
from rate_cells
where subject_kind <> 'all' and basis <> 'register_untold'
order by basis, grouping_kind, month, appliance_type, brand, model_family, age_band, given_complaint, group_value, subject_kind, subject
