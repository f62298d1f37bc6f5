-- One row per supplier and component: pieces and parts.
select supplier, component, pieces, pieces_returned, followed, failed
from supplier_counts
