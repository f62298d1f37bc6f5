-- One row per refused row of one file, with the name that the file has now.
select * replace ("{source_file}" as source_file)
from "{rows}"
