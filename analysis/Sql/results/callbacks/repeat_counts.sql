-- One row per component, supplier (null: all) and stretch of days after the replacement: parts at risk, and those
-- replaced again in it.
with stretches as (
    select '0-30' as stretch, 0 as after_days, 30 as to_days
    union all
    select '31-' || days, 30, days from int_early_window
    union all
    select '0-' || days, 0, days from int_early_window
),
at_risk as (
    select
        s.stretch,
        p.component,
        p.supplier,
        coalesce(p.again_days <= s.to_days, false)::integer as again
    from int_part_followups as p
    cross join stretches as s
    where p.followed_days >= s.to_days and coalesce(p.again_days > s.after_days, true)
)
select
    component,
    supplier,
    stretch,
    count(*) as at_risk,
    sum(again)::bigint as again
from at_risk
group by grouping sets ((component, stretch), (component, supplier, stretch), (supplier, stretch), (stretch))
order by component nulls first, supplier nulls first, stretch
