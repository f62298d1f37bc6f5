-- One row per refused row of one file, with the name and position that the file has now.
select * replace ("{source_file}" as source_file), "{source_order}" as source_order
from "{rows}"
