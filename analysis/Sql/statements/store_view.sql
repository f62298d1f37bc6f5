-- One row per row of a table of the store, as a view over its files.
create or replace view "{table}" as
from read_parquet("{files}", hive_partitioning = false)
