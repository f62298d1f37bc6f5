-- One row per staged row of one file, with the name and position that the file has now.
select *, "{source_file}" as source_file, "{source_order}"::integer as source_order
from "{rows}"
