-- One row per rate that lies outside its interval, claims more calls than there are, or is missing without a reason.
select basis, grouping_kind, appliance_type, model_family, age_band, subject, events, exposure, estimate, lower, upper, missing
from (select *, "grouping" as grouping_kind from failure_rates)
where (estimate is null) = (missing is null)
    or estimate < lower
    or estimate > upper
    or (exposure_unit = 'calls' and events > exposure)
    or (exposure_unit = 'calls' and estimate > 1)
    or (exposure <= 0 and estimate is not null)
    or shrunk < shrunk_lower
    or shrunk > shrunk_upper
