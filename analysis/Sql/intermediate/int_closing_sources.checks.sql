-- One row per file that stands twice or of which it is not known whether it tells.
select source_order, tells_closing
from int_closing_sources
qualify tells_closing is null or count(*) over (partition by source_order) > 1
