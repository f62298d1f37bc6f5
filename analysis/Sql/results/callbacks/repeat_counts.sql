-- One row per component, supplier (null: all) and stretch of days after the replacement: parts at risk, and those replaced again in it.
with stretches as (
    from (values ('0-30', 0, 30), ('31-90', 30, 90), ('0-90', 0, 90)) as s(stretch, after_days, to_days)
),

at_risk as (
    select
        s.stretch,
        p.component,
        p.supplier,
        coalesce(p.again_days <= s.to_days, false)::integer as again
    from part_followups as p
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
