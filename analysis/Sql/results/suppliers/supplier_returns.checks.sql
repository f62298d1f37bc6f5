-- One row per supplier and reason without a piece.
select supplier, return_reason, pieces_returned
from supplier_returns
where pieces_returned < 1
