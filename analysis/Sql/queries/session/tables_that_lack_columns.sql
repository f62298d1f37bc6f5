-- One row per table of the store that lacks a column of its shape.
select distinct shape.table_name
from duckdb_columns() as shape
where shape.schema_name = 'shape'
    and not exists (
        select 1
        from duckdb_columns() as stored
        where stored.schema_name = 'main' and stored.table_name = shape.table_name and stored.column_name = shape.column_name
    )
order by shape.table_name
