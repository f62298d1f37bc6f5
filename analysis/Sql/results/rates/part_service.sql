-- One row per component and supplier ('unknown': the log does not say): parts that were in service on known appliances
-- within the days asked for, how many days, and how many were replaced again.
-- A part serves from the day after it was fitted to the day it is replaced again, the appliance is removed, or the log
-- ends.
with served as (
    select
        f.component,
        f.supplier,
        greatest(f.fitted_on + 1, log.first_day) as starts_on,
        least(coalesce(f.fitted_on + f.again_days + 1, log.last_day + 1), coalesce(u.removed_on, log.last_day + 1), log.last_day + 1) as ends_before,
        coalesce(
            f.fitted_on + f.again_days between log.first_day and log.last_day
            and f.fitted_on + f.again_days < coalesce(u.removed_on, log.last_day + 1),
            false
        ) as replaced_again
    from int_part_followups as f
    cross join observation as log
    left join units as u using (unit_id)
)
select
    component,
    supplier,
    count(*) as parts,
    sum(ends_before - starts_on)::bigint as part_days,
    count(*) filter (where replaced_again) as replaced_again
from served
where starts_on < ends_before
group by component, supplier
order by component, supplier
