-- One row: the quarters that were replayed.
select min(quarter) as first_quarter, max(quarter) as last_quarter
from van_evidence
where quarter <> 'all'
