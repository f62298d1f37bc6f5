-- One row per supplier and component with more returned than received, more failed than followed, or counts below zero.
select supplier, component, pieces, pieces_returned, followed, failed
from supplier_counts
where pieces_returned > told_pieces or told_pieces > pieces or failed > followed or pieces < 0 or pieces_returned < 0
