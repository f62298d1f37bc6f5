-- One row per job without a place in the sources or an address key.
select place, place_key
from int_jobs_without_serial
where place is null
    or place_key is null
