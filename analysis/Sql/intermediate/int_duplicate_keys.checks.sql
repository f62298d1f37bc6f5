-- One row per key without a hash.
select mark
from int_duplicate_keys
where mark is null
