-- One row per share that is no share, falls with time, or is missing without a reason.
with ordered as (
    select *, lag(share_failed) over (partition by appliance_type, component, supplier order by days) as before
    from replaced_part_curve
)
select appliance_type, component, supplier, days, share_failed, missing
from ordered
where (share_failed is null) = (missing is null) or not coalesce(share_failed between 0 and 1, true)
    or share_failed < before - 1e-9 or failed_again > replaced
