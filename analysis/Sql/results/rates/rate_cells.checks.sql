-- One row per cell that is counted from nothing, or knows the need of more calls than it has.
select
    basis, grouping_kind, month, appliance_type, brand, model_family, age_band, given_complaint, group_value,
    subject_kind, subject, calls, known_calls, unit_days
from rate_cells
where known_calls > calls or calls + unit_days <= 0
