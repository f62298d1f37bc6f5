-- One row per fault of van_evidence: more finished than came, an interval that misses its share, stock idle beyond what
-- there is.
select quarter, van, policy
from van_evidence
where finished > jobs
    or completion_lower > completion + 1e-9
    or completion_upper < completion - 1e-9
    or stale_stock > money
