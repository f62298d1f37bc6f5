-- One row: combinations of family and component that had enough cases to show a bad batch.
select count(*) filter (where spans_tried > 0) as scanned
from bad_batch_tests
