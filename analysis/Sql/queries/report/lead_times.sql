-- One row per supplier.
select
    l.supplier, l.lines - l.waiting as received, l.waiting,
    l.median_days, l.median_lower, l.median_upper, l.missing as median_missing, l.ninety_percent_days,
    q.return_share, q.return_lower, q.return_upper, q.return_missing
from lead_times as l
left join supplier_quality as q
    on l.supplier = q.supplier and q.component is null
where l."grouping" = 'all'
order by l.supplier
