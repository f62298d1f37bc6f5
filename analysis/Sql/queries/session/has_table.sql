-- One row: how many columns a table or view of that name has in this session.
select count(*) as columns
from duckdb_columns()
where table_name = $name
