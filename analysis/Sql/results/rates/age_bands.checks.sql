-- One row per band that does not end after it begins.
select age_band, from_days, to_days
from age_bands
where to_days <= from_days
