-- One row per row of a table, with the columns named.
select "{columns}"
from "{table}"
