-- One row per family and component scanned that appears twice, or with chances that are none.
select appliance_type, model_family, component
from bad_batch_tests
group by all
having count(*) > 1 or min(p) < 0 or max(q) > 1 or max(cases) > max(calls)
