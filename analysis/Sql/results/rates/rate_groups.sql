-- One row per basis and group of calls or units: its calls, those whose need is known, and the days its units were watched.
select
    basis, grouping_kind, month, appliance_type, brand, model_family, age_band, given_complaint, group_value, calls, known_calls, unit_days
from rate_cells
where subject_kind = 'all' and basis <> 'register_untold'
order by basis, grouping_kind, month, appliance_type, brand, model_family, age_band, given_complaint, group_value
