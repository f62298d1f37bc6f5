-- One row per supplier and component with parts that were followed; those that stand out first, then by how far they
-- fail beyond the others.
select
    supplier, component, followed, failed, failed_share, failed_lower, failed_upper, missing,
    others_failed / nullif(others_followed, 0)::double as others_share, others_followed, stands_out
from supplier_quality
where component is not null and followed > 0 and supplier <> 'unknown'
order by stands_out desc, (failed_share is null), failed desc, supplier, component
limit 40
