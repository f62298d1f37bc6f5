-- One row per source row without a kind, a key, a content hash or a place.
select kind, source_order, source_line
from int_natural_keys
where kind is null
    or row_key is null
    or row_hash is null
    or source_order is null
    or source_line is null
