-- One row per column of a table or view, in order.
select
    column_name,
    data_type
from duckdb_columns()
where table_name = $name
order by column_index
