-- One row per monthly rate outside its interval, without an event, or missing without a reason.
select month, basis, appliance_type, model_family, subject, events, exposure, estimate, lower, upper, missing
from failure_rates_by_month
where (estimate is null) = (missing is null)
    or estimate < lower
    or estimate > upper
    or events < 1
    or (exposure_unit = 'calls' and events > exposure)
