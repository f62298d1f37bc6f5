-- One row per row of a table of an earlier version's store, as a view over its files; columns that it lacks are null.
create or replace view "{table}" as
from shape."{table}"
union all by name
from read_parquet("{files}", hive_partitioning = false)
