-- One row per basis, group and subject: its events.
select
    basis, grouping_kind, month, appliance_type, brand, model_family, age_band, given_complaint,
    subject_kind, subject, events
from rate_counts
