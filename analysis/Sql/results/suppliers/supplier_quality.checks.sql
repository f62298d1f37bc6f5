-- One row per supplier and component with a share outside its interval, a q below its p, or a component whose expected
-- failures do not add up.
select supplier, component, followed, failed, expected, failed_share, p, q
from supplier_quality
where failed_share not between failed_lower and failed_upper
    or return_share not between return_lower and return_upper
    or q < p
    or (failed_share is null) = (missing is null)
union all
select 'all', component, sum(followed)::bigint, sum(failed)::bigint, sum(expected), null, null, null
from supplier_quality
where component is not null
group by component
having abs(sum(expected) - sum(failed)) > 1e-6 * (1 + sum(failed))
