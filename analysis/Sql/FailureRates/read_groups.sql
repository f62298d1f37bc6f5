-- One row per basis and group: its size.
select
    basis, grouping_kind, month, appliance_type, brand, model_family, age_band, given_complaint,
    calls, known_calls, unit_days
from rate_groups
