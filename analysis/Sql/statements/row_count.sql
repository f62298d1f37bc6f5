-- One row: the number of rows of a table.
select count(*) as row_count
from "{table}"
