-- One row: what the catalog says of a number, and on how many jobs its current number was fitted.
with fitted as (
    select count(distinct p.job_id) as jobs, coalesce(sum(p.quantity), 0)::bigint as pieces, max(j.opened_on) as last_on
    from job_parts as p
    join jobs as j using (job_id)
    where p.part_number = $number
)
select
    p.part_number, p.description, p.component, p.price, p.size_class, p.returnable_days, p.warranty_days, p.supplier, p.available,
    f.jobs, f.pieces, f.last_on, p.basis
from parts as p
cross join fitted as f
where p.part_number = $number
