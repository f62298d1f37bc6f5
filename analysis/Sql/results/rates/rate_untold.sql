-- One row per group and subject of the register's rates with cases that may belong to it: how many, and how many of them are
-- expected to. A value that the jobs do not tell is 'unknown'.
select
    'register_unit_years' as basis,
    grouping_kind, month, appliance_type, brand, model_family, age_band, given_complaint, group_value, subject_kind, subject,
    calls as possible,
    chance::double as expected
from rate_cells
where basis = 'register_untold' and subject_kind <> 'all'
order by grouping_kind, month, appliance_type, brand, model_family, age_band, given_complaint, group_value, subject_kind, subject
