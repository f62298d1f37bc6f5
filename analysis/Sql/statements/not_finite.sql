-- One row: the number of rows whose value is NaN or infinite.
select count(*) as row_count
from "{table}"
where not isfinite("{column}")
