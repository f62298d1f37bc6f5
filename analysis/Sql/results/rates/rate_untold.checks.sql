-- One row per group in which more is expected than can be.
select appliance_type, model_family, age_band, subject
from rate_untold
where expected > possible or possible < 1
